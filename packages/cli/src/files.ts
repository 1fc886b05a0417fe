import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Method, parseStudy, type Study } from '@evenhand/core/ground/study';
import { type Io, IoFault } from './io.ts';
import { atFile } from './report.ts';

/** `-` stands for stdin and stdout. */
export const stream = '-';

export function nameOf(file: string): string {
  return file === stream ? 'standard input' : file;
}

/** The text of a file; bytes that are no UTF-8 are a finding, never a guess. */
export async function readText(io: Io, file: string): Promise<Result<string, Finding>> {
  let bytes: Uint8Array;
  try {
    bytes = file === stream ? await io.readStdin() : await io.readFile(file);
  } catch (error) {
    if (!(error instanceof IoFault)) throw error;
    return fail(finding('cli/file', {}, { file: nameOf(file), reason: error.message }));
  }
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    return fail(finding('cli/not-text', {}, { file: nameOf(file), reason: badBytes(bytes) }));
  }
}

function badBytes(bytes: Uint8Array): string {
  const first = [bytes[0], bytes[1]].join(' ');
  if (first === '255 254' || first === '254 255') return 'it is UTF-16';
  if (first === '80 75') return 'it is a packed file, such as a workbook of a spreadsheet program';
  return 'it holds bytes that no letter has there; it may come from an old spreadsheet program';
}

/** Reads and checks a study; findings carry the name of the file. */
export async function readStudyFile(io: Io, file: string): Promise<Result<Study, readonly Finding[]>> {
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const study = parseStudy(text.value);
  return study.ok ? study : fail(atFile(study.error, nameOf(file)));
}

/** What would come of writing a result there, told before the work; undefined where nothing stands in the way. */
export async function unwritable(io: Io, file: string): Promise<Finding | undefined> {
  const reason = file === stream ? undefined : await io.writeFault(file);
  return reason === undefined ? undefined : finding('cli/write', {}, { file, reason });
}

/** Writes a result to a file, or to stdout for `-`. */
export async function writeResult(
  io: Io,
  file: string,
  content: string | Uint8Array,
): Promise<Result<undefined, Finding>> {
  if (file === stream) {
    await io.out(content);
    return ok(undefined);
  }
  try {
    await io.writeFile(file, content);
    return ok(undefined);
  } catch (error) {
    if (!(error instanceof IoFault)) throw error;
    return fail(finding('cli/write', {}, { file, reason: error.message }));
  }
}

/**
 * The method that is asked for by its id or its name; without a wish, the first. Where that was a choice among several,
 * the user is told.
 */
export function chooseMethod(io: Io, study: Study, wish: string | undefined): Result<Method, Finding> {
  const known = study.methods.map((method) => `${method.id} (${method.name})`).join(', ') || 'no method';
  const [first] = study.methods;
  if (wish === undefined) {
    if (first === undefined) return fail(finding('record/no-method', {}, { method: 'to take', known }));
    if (study.methods.length > 1)
      io.say(`The method ${first.id} is taken; --method chooses another of: ${known}.`);
    return ok(first);
  }
  const byId = study.methods.find((method) => method.id === wish);
  const byName = study.methods.filter((method) => method.name.toLowerCase() === wish.toLowerCase());
  const found = byId ?? (byName.length === 1 ? byName[0] : undefined);
  return found === undefined ? fail(finding('record/no-method', {}, { method: wish, known })) : ok(found);
}

/** What a file is to become: by `--as` where it is given, else by the end of its name. */
export function formatOf<Format extends string>(
  file: string,
  as: string | undefined,
  formats: readonly Format[],
): Result<Format, string> {
  const choice = `${formats.slice(0, -1).join(', ')} or ${formats.at(-1)}`;
  if (as !== undefined) {
    const named = formats.find((format) => format === as.toLowerCase());
    return named === undefined ? fail(`--as ${as} is not known; it can be ${choice}.`) : ok(named);
  }
  if (file === stream) return fail(`With -o - it must be said what to write: --as ${choice}.`);
  const found = formats.find((format) => file.toLowerCase().endsWith(`.${format}`));
  return found === undefined
    ? fail(`${file} does not end in ${formats.map((format) => `.${format}`).join(' or ')}.`)
    : ok(found);
}
