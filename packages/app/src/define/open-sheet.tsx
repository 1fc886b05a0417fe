import type { SheetFault, TimeStudySheet } from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { useRef, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { AllowancesPanel } from './allowances-panel.tsx';
import { addElement, grouped } from './define-edits.ts';
import { ElementsTable } from './elements-table.tsx';
import { FaultsList } from './faults-list.tsx';
import { ForeignPart } from './foreign-part.tsx';
import { type ReadingsHandle, ReadingsSection } from './readings/readings-section.tsx';
import { RunChartPart, wholeCycle } from './run-chart-part.tsx';
import { SheetHead } from './sheet-head.tsx';
import { SittingsPart } from './sittings-part.tsx';
import { StandardBlock } from './standard-block.tsx';
import { SummaryTable } from './summary-table.tsx';
import type { BootstrapState } from './use-sheet.ts';

/** The open time study, from its heading to its last foreign element. */
export function OpenSheet(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly timeStudy: TimeStudy;
  readonly sheet: TimeStudySheet;
  readonly stale: boolean;
  readonly bootstrap: BootstrapState;
}) {
  const { desk, study, timeStudy, sheet } = props;
  const readings = useRef<ReadingsHandle>(null);
  const page = useRef<HTMLDivElement>(null);
  const [charted, setCharted] = useState(wholeCycle);
  const focusField = (field: string) => {
    const target = page.current?.querySelector<HTMLElement>(`[data-field="${field}"]`);
    target?.scrollIntoView({ block: 'center' });
    target?.focus();
  };
  const goTo = ({ element, cycle, field }: Pick<SheetFault, 'element' | 'cycle' | 'field'>) => {
    if (element !== undefined && (cycle !== undefined || field === undefined)) {
      readings.current?.goTo(element, cycle);
    } else focusField(field ?? 'source');
  };
  return (
    <div className="study-sheet" ref={page}>
      <div className="sheet-top">
        <SheetHead
          desk={desk}
          study={study}
          timeStudy={timeStudy}
          sheet={sheet}
          onSittings={() => {
            const part = page.current?.querySelector('.sittings-part');
            part?.scrollIntoView({ block: 'center' });
            part?.querySelector<HTMLElement>('button, input')?.focus();
          }}
        />
        <StandardBlock
          sheet={sheet}
          stale={props.stale}
          bootstrap={props.bootstrap}
          faults={sheet.faults.length}
        />
      </div>
      <FaultsList
        sheet={sheet}
        onGo={goTo}
        onAddMissing={() => {
          const edits = sheet.missing.map((name) => addElement(timeStudy, name, crypto.randomUUID()));
          const edit = grouped('add the elements of the record', edits);
          if (edit !== undefined) desk.dispatch(edit);
        }}
      />
      <ReadingsSection
        desk={desk}
        timeStudy={timeStudy}
        sheet={sheet}
        handle={readings}
        onName={setCharted}
      />
      <SummaryTable sheet={sheet} chosen={charted} onName={setCharted} />
      <div className="sheet-halves">
        <RunChartPart sheet={sheet} chosen={charted} onChoose={setCharted} />
        <div>
          <SittingsPart desk={desk} timeStudy={timeStudy} lastCycle={sheet.cycles.at(-1) ?? 0} />
          <ForeignPart desk={desk} timeStudy={timeStudy} />
        </div>
      </div>
      <ElementsTable desk={desk} timeStudy={timeStudy} />
      <AllowancesPanel desk={desk} timeStudy={timeStudy} sheet={sheet} />
      <section className="method-words" aria-label="How the interval was made">
        <h3>How this was worked out</h3>
        <p>{sheet.words.interval === '' ? 'There is no interval yet.' : sheet.words.interval}</p>
        <p className="soft">
          {sheet.rows.find(({ summary }) => summary?.rule !== undefined)?.summary?.rule?.words}
        </p>
      </section>
    </div>
  );
}
