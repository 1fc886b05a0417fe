/** Objects are one when their names differ only in case and spaces. Empty for a motion without an object. */
export function objectKey(object: string | undefined): string {
  return (object ?? '').trim().replace(/\s+/g, ' ').toLowerCase();
}
