import { micros } from '@evenhand/core/ground/base';
import { endOf, isConfirmedCycle } from '@evenhand/core/ground/study';
import { numberText, timeNumber, timeText, timeUnits } from '@evenhand/core/ground/units';
import { usePreferences } from '../shell/preferences.ts';
import { CommitField } from './commit-field.tsx';
import type { RecordDesk } from './desk.ts';
import { setAside } from './desk-edits.ts';
import { CommandButton } from './transport.tsx';
import { useDesk, useDocument } from './use-desk.ts';

/** The cycles with their times; each can be shown, and set aside with a reason. */
export function CyclesPanel(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  useDesk(desk);
  useDocument(desk);
  const { unit } = usePreferences();
  const { method, clock } = desk;
  if (method === undefined || clock === undefined) return <p className="soft">Open a film first.</p>;
  const { cycles } = method;
  const here = desk.cycleHere?.item.id;
  const rows = cycles.items.map((cycle, index) => ({
    cycle,
    index,
    time: clock.span(cycle.start, endOf(cycles, index)),
    open: cycle.setAside === undefined && !isConfirmedCycle(method, index),
  }));
  const open = rows.filter((row) => row.open).length;
  const typical = rows.filter((row) => row.cycle.setAside === undefined && !row.open);
  const mean =
    typical.length === 0
      ? undefined
      : Math.round(typical.reduce((sum, row) => sum + row.time, 0) / typical.length);
  return (
    <section aria-label="Cycles">
      <div className="actions">
        <CommandButton desk={desk} id="cycles.mark" text="Cycle begins here" />
        <CommandButton desk={desk} id="cycles.end" text="Last cycle ends here" />
        <CommandButton desk={desk} id="cycles.remove" text="Take this mark away" />
        <CommandButton desk={desk} id="proposals.propose" text="Propose the others" />
      </div>
      {rows.length === 0 ? (
        <p className="soft">
          No cycle is marked. Go to the frame where a cycle begins and press Enter; each mark ends the cycle
          before it.
        </p>
      ) : (
        <table className="plain cycles">
          <thead>
            <tr>
              <th scope="col">Cycle</th>
              <th scope="col" className="number">
                {timeUnits[unit].symbol}
              </th>
              <th scope="col">Set aside because</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ cycle, index, time, open: proposed }) => (
              <tr key={cycle.id} className={cycle.id === here ? 'here' : ''}>
                <th scope="row">
                  <button
                    type="button"
                    className="quiet"
                    onClick={() => {
                      desk.select({
                        kind: 'span',
                        hand: 'both',
                        from: cycle.start,
                        to: endOf(cycles, index),
                      });
                      desk.jump(cycle.start);
                    }}
                  >
                    {index + 1}
                    {proposed ? '?' : ''}
                  </button>
                </th>
                <td className="number">{timeNumber(time, unit)}</td>
                <td>
                  <CommitField
                    label={`Why cycle ${index + 1} is set aside`}
                    value={cycle.setAside ?? ''}
                    placeholder={proposed ? 'to be confirmed' : 'typical'}
                    onCommit={(text) => setAside(desk, cycle.id, text)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {mean === undefined ? null : (
        <p className="soft">
          Mean of {numberText(typical.length, 0)} typical {typical.length === 1 ? 'cycle' : 'cycles'}:{' '}
          {timeText(micros(mean), unit)}
          {open === 0 ? '' : `; ${open} to be confirmed and not in it`}
        </p>
      )}
    </section>
  );
}
