import { finding } from '@evenhand/core/ground/findings';
import { encodeTrack, writeTrackCsv } from '@evenhand/core/record';
import { badUse, type Command } from '../command.ts';
import { formatOf, stream, unwritable, writeResult } from '../files.ts';
import { exitCode, type FoundTrack, type Io, type TrackProgress } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';

/** Progress is told on a line of its own about so often. */
const tellEveryMs = 5000;

export const recordTrack: Command = {
  words: ['record', 'track'],
  summary: 'find both hands in every frame of a film',
  operands: ['FILM'],
  options: {
    output: { short: 'o', value: 'FILE', help: 'FILE.bin or FILE.csv; - for standard output', needed: true },
    as: { value: 'bin|csv', help: 'what to write, where the name does not say it' },
    mirrored: { help: 'the film is a mirror image: swap left and right' },
    workers: { value: '1|2', help: 'how many search at once; left out, 2' },
    json: { help: 'print what was found as JSON' },
  },
  example: 'evenhand record track couplings.mp4 -o couplings.track.bin',
  notes: [
    'It needs Chrome, Chromium or Edge on this machine, which it drives without a window: Node alone cannot decode films. EVENHAND_BROWSER names the program where it is not found by itself; npm run browser brings one. Nothing leaves the machine.',
    'A hand that is not seen is missing in the track, never invented. Exit code 1: a track was written, but the warnings say why it should not be relied on as it is.',
  ],
  run: async (call, io) => {
    const [film = ''] = call.operands;
    const output = call.text('output') ?? '';
    const json = call.flag('json');
    const format = formatOf(output, call.text('as'), ['bin', 'csv']);
    if (!format.ok) return failWith(io, json, [badUse(format.error, recordTrack.example)]);
    if (json && output === stream)
      return failWith(io, false, [badUse('--json and -o - both want standard output.', recordTrack.example)]);
    const workers = call.text('workers') ?? '2';
    if (workers !== '1' && workers !== '2')
      return failWith(io, json, [badUse(`--workers ${workers} is not 1 or 2.`, recordTrack.example)]);
    const unread = await io.readFault(film);
    if (unread !== undefined)
      return failWith(io, json, [finding('cli/file', {}, { file: film, reason: unread })]);
    // A search takes minutes; it should not end in a file that cannot be written.
    const unwritten = await unwritable(io, output);
    if (unwritten !== undefined) return failWith(io, json, [unwritten]);
    const found = await io.trackFilm(film, {
      name: film.split(/[\\/]/).at(-1) ?? film,
      mirrored: call.flag('mirrored'),
      workers: workers === '1' ? 1 : 2,
      onProgress: teller(io),
    });
    if (!found.ok) return failWith(io, json, atFile(found.error, film));
    const { track, report, findings } = found.value;
    const written = await writeResult(
      io,
      output,
      format.value === 'csv' ? writeTrackCsv(track) : encodeTrack(track),
    );
    if (!written.ok) return failWith(io, json, [written.error]);
    io.say(reportLine(report));
    say(io, atFile(findings, film));
    if (json) await outJson(io, { ok: true, file: output, format: format.value, report, findings });
    return findings.some(({ severity }) => severity !== 'note') ? exitCode.findings : exitCode.done;
  },
};

function reportLine({ frames, both, leftOnly, rightOnly, none }: FoundTrack['report']): string {
  return `Both hands in ${both} of ${frames} frames, only the left in ${leftOnly}, only the right in ${rightOnly}, none in ${none}.`;
}

/** Says how far it is, now and then. */
function teller(io: Io): (progress: TrackProgress) => void {
  let told = io.now();
  return ({ done, frames, secondsLeft }) => {
    if (io.now() - told < tellEveryMs) return;
    told = io.now();
    const left = secondsLeft === undefined ? '' : `, about ${Math.ceil(secondsLeft)} s left`;
    io.say(`${done} of ${frames} frames searched${left}`);
  };
}
