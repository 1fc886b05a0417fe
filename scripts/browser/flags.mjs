/**
 * What a browser of the tests is started with: it reaches nothing but our own pages, and letters have the widths of
 * their font, which the browser without windows would otherwise fit to whole pixels.
 */
export const TEST_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--font-render-hinting=none',
];
