/**
 * A small, strict reader of WebVTT files, written from the W3C recommendation “WebVTT: The Web Video Text Tracks
 * Format”, section 4 (syntax), and from nothing else. It throws on anything the syntax does not allow to be written,
 * where players would shrug. Regions and style blocks are not read: the files under test have none.
 */
export interface VttCue {
  readonly id: string | undefined;
  readonly startMs: number;
  readonly endMs: number;
  readonly settings: Readonly<Record<string, string>>;
  /** Text as it is shown: tags taken out, references resolved. */
  readonly text: string;
  readonly lines: number;
}

export interface VttFile {
  readonly header: string;
  readonly notes: readonly string[];
  readonly cues: readonly VttCue[];
}

export function parseVtt(file: string): VttFile {
  const text = file.startsWith('\uFEFF') ? file.slice(1) : file;
  if (text.includes('\u0000')) throw new Error('U+0000 may not occur');
  const lines = text.split(/\r\n|\n|\r/);
  const head = lines[0] ?? '';
  if (!/^WEBVTT(?:[ \t].*)?$/.test(head)) throw new Error(`not a signature line: ${head}`);
  if (head.includes('-->')) throw new Error('an arrow in the header');
  if (lines[1] !== '') throw new Error('the signature line must be followed by an empty line');
  const notes: string[] = [];
  const cues: VttCue[] = [];
  for (const block of blocksOf(lines.slice(2))) {
    if (/^NOTE(?:[ \t]|$)/.test(block[0] ?? '')) {
      if (block.some((line) => line.includes('-->'))) throw new Error('an arrow in a note');
      notes.push(block.join('\n'));
    } else cues.push(readCue(block));
  }
  return { header: head.slice('WEBVTT'.length).trim(), notes, cues };
}

/** Blocks are divided by one or more empty lines; a line of blanks is not empty. */
function blocksOf(lines: readonly string[]): string[][] {
  const blocks: string[][] = [[]];
  for (const line of lines) {
    if (line === '') blocks.push([]);
    else blocks.at(-1)?.push(line);
  }
  return blocks.filter((block) => block.length > 0);
}

function readCue(block: readonly string[]): VttCue {
  const timed = block[0]?.includes('-->') ? 0 : 1;
  const id = timed === 1 ? block[0] : undefined;
  const timing = block[timed] ?? '';
  const match = /^(\S+)[ \t]+-->[ \t]+(\S+)(?:[ \t]+(\S.*))?$/.exec(timing);
  if (match === null) throw new Error(`not a timing line: ${timing}`);
  const startMs = readTimestamp(match[1] ?? '');
  const endMs = readTimestamp(match[2] ?? '');
  if (endMs <= startMs) throw new Error(`the cue ends before it begins: ${timing}`);
  const payload = block.slice(timed + 1);
  if (payload.some((line) => line.includes('-->'))) throw new Error('an arrow in the text of a cue');
  return {
    id,
    startMs,
    endMs,
    settings: readSettings(match[3] ?? ''),
    text: readText(payload.join('\n')),
    lines: payload.length,
  };
}

/** Two or more digits for hours (may be left out), two for minutes (00–59), two for seconds (00–59), three decimals. */
function readTimestamp(text: string): number {
  const match = /^(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})$/.exec(text);
  if (match === null) throw new Error(`not a timestamp: ${text}`);
  const [, hours = '0', minutes = '', seconds = '', thousandths = ''] = match;
  return ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000 + Number(thousandths);
}

const percentage = String.raw`(?:100(?:\.0+)?|\d{1,2}(?:\.\d+)?)%`;
const settingForms: Readonly<Record<string, RegExp>> = {
  vertical: /^(?:rl|lr)$/,
  line: new RegExp(`^(?:-?\\d+|${percentage})(?:,(?:start|center|end))?$`),
  position: new RegExp(`^${percentage}(?:,(?:line-left|center|line-right))?$`),
  size: new RegExp(`^${percentage}$`),
  align: /^(?:start|center|end|left|right)$/,
};

function readSettings(text: string): Record<string, string> {
  const settings: Record<string, string> = {};
  for (const part of text.split(/[ \t]+/).filter((item) => item !== '')) {
    const colon = part.indexOf(':');
    const [name, value] = [part.slice(0, colon), part.slice(colon + 1)];
    if (!settingForms[name]?.test(value)) throw new Error(`not a cue setting: ${part}`);
    if (name in settings) throw new Error(`the setting ${name} stands twice`);
    settings[name] = value;
  }
  return settings;
}

const references: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&lrm;': '\u200e',
  '&rlm;': '\u200f',
  '&nbsp;': '\u00a0',
};

/** Cue text: spans that are closed in order, references, and text without a bare & or <. */
function readText(payload: string): string {
  const open: string[] = [];
  let text = '';
  for (const [token] of payload.matchAll(/<[^>]*>?|&[^;\s]*;?|[^<&]+/g)) {
    if (token.startsWith('<')) readTag(token, open);
    else if (token.startsWith('&')) {
      const shown = references[token];
      if (shown === undefined) throw new Error(`not a reference: ${token}`);
      text += shown;
    } else text += token;
  }
  if (open.length > 0) throw new Error(`not closed: ${open.join(' ')}`);
  return text;
}

function readTag(token: string, open: string[]): void {
  const match = /^<(\/?)(c|i|b|u|ruby|rt|v|lang)((?:\.[^\s.<>&]+)*)(?:[ \t]+([^\n\r&>]+))?>$/.exec(token);
  if (match === null) throw new Error(`not a tag: ${token}`);
  const [, slash, name = ''] = match;
  if (slash === '') open.push(name);
  else if (open.pop() !== name) throw new Error(`closed out of order: ${token}`);
}
