/** The message of an error as the middle of a sentence. */
export function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return text.trim().replace(/\.+$/, '') || 'an unknown error';
}
