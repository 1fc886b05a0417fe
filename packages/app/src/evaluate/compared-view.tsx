import type { ComparisonFacts } from '@evenhand/core/evaluate';
import type { MethodReading } from '@evenhand/core/examine';
import type { Comparison, Study } from '@evenhand/core/ground/study';
import { countText } from '@evenhand/core/ground/units';
import { useDeferredValue, useRef, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { usePreferences } from '../shell/preferences.ts';
import { ChartsPart } from './charts-part.tsx';
import { ClaimPart } from './claim-part.tsx';
import { CycleChoice } from './cycle-choice.tsx';
import { DifferencePart } from './difference-part.tsx';
import { FiguresPart } from './figures-part.tsx';
import type { Side } from './film-pair.ts';
import { MachinesPart } from './machines-part.tsx';
import { MoneyPart } from './money-part.tsx';
import { PageActions } from './page-actions.tsx';
import { PairView } from './pair-view.tsx';
import { SharedMotions } from './shared-motions.tsx';
import { middleCycle, usePair } from './use-pair.ts';
import { useRowPlay } from './use-row-play.ts';

/** A comparison worked out: the claim above, films and charts at the left, figures and money at the right. */
export function ComparedView(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: Comparison;
  readonly facts: ComparisonFacts;
  readonly stale: boolean;
}) {
  const { desk, study, open, facts, stale } = props;
  const { unit } = usePreferences();
  const { proof } = facts;
  const main = useRef<HTMLDivElement>(null);
  // The claim and the films are there first; long tables and pictures follow.
  const later = useDeferredValue<ComparisonFacts | undefined>(facts, undefined);
  const { positions, choose } = useChosenCycles(proof);
  const { pair, mode, modes, basis, words, setMode } = usePair(proof, positions);
  const rows = useRowPlay({
    proof,
    pair,
    positions,
    onCycle: (side, number) => {
      choose(side, number);
      main.current?.querySelector('.pair')?.scrollIntoView({ block: 'nearest' });
    },
  });
  const numbers = {
    before: proof.before.cycles[positions.before]?.number ?? 0,
    after: proof.after.cycles[positions.after]?.number ?? 0,
  };
  const choice = (side: Side) => (
    <CycleChoice
      side={side}
      reading={proof[side]}
      number={numbers[side]}
      onChange={(number) => choose(side, number)}
    />
  );
  return (
    <div className="evaluate-body">
      <ClaimPart proof={proof} stale={stale}>
        <PageActions study={study} facts={facts} unit={unit} />
      </ClaimPart>
      <div className="evaluate-main" ref={main}>
        {pair === undefined ? null : (
          <>
            <PairView
              pair={pair}
              names={{ before: proof.before.method.name, after: proof.after.method.name }}
              choices={{ before: choice('before'), after: choice('after') }}
              mode={mode}
              modes={modes}
              basis={basis}
              onMode={setMode}
              onNext={rows.next}
              words={mode === 'real' ? `${words}${unitsWords(proof.before, proof.after)}` : words}
            />
            <ChartsPart study={study} facts={facts} pair={pair} cycles={numbers} unit={unit} />
          </>
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <aside className="evaluate-side" aria-label="Figures, difference and money" tabIndex={0}>
        <FiguresPart proof={proof} unit={unit} />
        {later === undefined ? null : (
          <>
            <SharedMotions pace={later.proof.pace} unit={unit} />
            <DifferencePart facts={later} unit={unit} onRow={rows.play} />
          </>
        )}
        <MoneyPart desk={desk} study={study} comparison={open} money={facts.money} unit={unit} />
        <MachinesPart />
        <p className="soft caution">
          Pace, load, reach and repetition can hurt: whether the work may be done so is settled by local rules
          and qualified people. This compares methods, never persons.
        </p>
      </aside>
    </div>
  );
}

/** The cycles on screen: those that were chosen, otherwise of each method the one nearest to its mean. */
function useChosenCycles(proof: Readonly<Record<Side, MethodReading>>) {
  const [chosen, setChosen] = useState<Partial<Record<Side, number>>>({});
  const position = (side: Side) => {
    const found = proof[side].cycles.findIndex(({ number }) => number === chosen[side]);
    return found >= 0 ? found : middleCycle(proof[side]);
  };
  return {
    positions: { before: position('before'), after: position('after') },
    choose: (side: Side, number: number) => setChosen((known) => ({ ...known, [side]: number })),
  };
}

/** Two cycles that make different amounts must not be compared by eye. */
function unitsWords({ method: before }: MethodReading, { method: after }: MethodReading): string {
  if (before.unitsPerCycle === after.unitsPerCycle) return '';
  return ` A cycle makes ${countText(before.unitsPerCycle, 'unit')} before and ${countText(after.unitsPerCycle, 'unit')} after.`;
}
