/** Hands a file to the person, under a name that every system allows. */
export function download(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name.replace(/[^\p{L}\p{N}._ -]+/gu, '-').slice(0, 120);
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
