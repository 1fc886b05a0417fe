import { ok } from '@evenhand/core/ground/base';
import { applyEdit } from '@evenhand/core/ground/edit';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { filmOf, methodClock, writeStudy } from '@evenhand/core/ground/study';
import { countText, numberText, percentText } from '@evenhand/core/ground/units';
import {
  type Proposal,
  type ProposeReport,
  proposalEdit,
  proposeFromTrack,
  proposeReport,
} from '@evenhand/core/record';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, nameOf, readStudyFile, stream, unwritable, writeResult } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { readTrackFile } from './track-source.ts';

export const recordPropose: Command = {
  words: ['record', 'propose'],
  summary: 'propose the other cycles of a film from its confirmed cycles and a track of the hands',
  operands: ['STUDY'],
  options: {
    track: { value: 'FILE', help: 'the track: a table (CSV) or a track file', needed: true },
    output: {
      short: 'o',
      value: 'STUDY2',
      help: 'where to write the study with the proposals; - for standard output',
    },
    method: { value: 'ID', help: 'id or name of the method; left out, the first' },
    rate: { value: 'N', help: 'frames of the track a second, for a method without a film' },
    replace: { help: 'write over a study that is there already' },
    json: { help: 'print what was proposed as JSON' },
  },
  example: 'evenhand record propose couplings.evenhand.json --track hands.csv -o proposed.evenhand.json',
  notes: [
    'A track says for each frame of the film where the hands are: frame,hand,x,y[,z][,opening]. docs/track-format.md describes it.',
    'What a person has marked or confirmed stays as it is. What is proposed is marked so, with a confidence, and counts in no figure until it is confirmed.',
    'Without a confirmed cycle only a rough row of each hand is proposed.',
    'Exit code 1: nothing was proposed, and the findings say why; the study is written without proposals.',
  ],
  run: async (call, io) => {
    const [file = ''] = call.operands;
    const json = call.flag('json');
    const output = call.text('output');
    const wrong = await wrongUse(call, io, output);
    if (wrong !== undefined) return failWith(io, json && output !== stream, [wrong]);
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const method = chooseMethod(io, study.value, call.text('method'));
    if (!method.ok) return failWith(io, json, atFile([method.error], nameOf(file)));
    const film = filmOf(study.value, method.value);
    const track = await readTrackFile(io, call.text('track') ?? '', film);
    if (!track.ok) return failWith(io, json, track.error);
    const rate = call.text('rate');
    const input = {
      study: study.value,
      method: method.value.id,
      track: track.value.track,
      ...(rate === undefined ? {} : { framesPerSecond: Number(rate) }),
    };
    const proposal = proposeFromTrack(input, teller(io));
    if (!proposal.ok) return failWith(io, json, proposal.error);
    const notes = [...track.value.notes, ...proposal.value.findings];
    say(io, notes);
    const clock = methodClock(study.value, method.value);
    const edit = proposalEdit(method.value, proposal.value, clock, io.newId);
    const next = edit === undefined ? ok({ study: study.value }) : applyEdit(study.value, edit);
    if (!next.ok) return failWith(io, json, [next.error].flat());
    if (output !== undefined) {
      const written = await writeResult(io, output, writeStudy(next.value.study));
      if (!written.ok) return failWith(io, json, [written.error]);
    }
    const report = proposeReport(study.value, method.value, proposal.value, notes);
    if (json) await outJson(io, report);
    else if (output !== stream) io.say(words(report, proposal.value));
    const { left, right } = proposal.value;
    return left.length + right.length === 0 ? exitCode.findings : exitCode.done;
  },
};

/** Progress is told on a line of its own about so often. */
const tellEveryMs = 5000;

/** Says how far it is, now and then; a short search says nothing. */
function teller(io: Io): (share: number) => void {
  const began = io.now();
  let told = began;
  return (share) => {
    const now = io.now();
    if (now - told < tellEveryMs || share >= 1) return;
    told = now;
    const left = ((now - began) * (1 - share)) / share / 1000;
    io.say(`${percentText(share, 0)} done, about ${Math.ceil(left)} s left`);
  };
}

async function wrongUse(call: Call, io: Io, output: string | undefined): Promise<Finding | undefined> {
  const { example } = recordPropose;
  const json = call.flag('json');
  if (output === undefined && !json)
    return badUse('It must be said where to write the study (-o), or --json.', example);
  if (output === stream && json) return badUse('--json and -o - both want standard output.', example);
  const rate = call.text('rate');
  if (rate !== undefined && !(Number(rate) >= 1 && Number(rate) <= 1000))
    return badUse(`--rate ${rate} is not a rate; write frames a second from 1 to 1000.`, example);
  if (output !== undefined && output !== stream && !call.flag('replace') && (await io.exists(output)))
    return finding('cli/exists', {}, { file: output });
  return output === undefined ? undefined : await unwritable(io, output);
}

function words(report: ProposeReport, { left, right }: Proposal): string {
  if (left.length === 0 && right.length === 0) return 'Nothing was proposed; why is said above.';
  const chances = [...left, ...right].map(({ confidence }) => confidence);
  const expected = chances.reduce((sum, chance) => sum + chance, 0);
  return [
    `${countText(report.cycles.length, 'cycle')} proposed: left hand ${countText(left.length, 'motion')}, right hand ${countText(right.length, 'motion')}.`,
    chances.length === 0
      ? ''
      : `Of ${countText(chances.length, 'boundary', 'boundaries')} about ${numberText(expected, 0)} are expected to hold within a fifth of a second; look at the least certain first.`,
  ]
    .filter((line) => line !== '')
    .join('\n');
}
