import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Scene } from '@evenhand/core/ground/scene';
import { writeStudy } from '@evenhand/core/ground/study';
import { type GroupingId, groupings } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { chartFacts, motionsToCsv, motionsToVtt, processChart, twoHandChart } from '@evenhand/core/record';
import { sceneToSvg } from '@evenhand/draw';
import { useMemo, useState } from 'react';
import { api } from '../editor/page-ports.ts';
import { failureFindings } from '../editor/server-api.ts';
import type { RecordDesk } from '../record/desk.ts';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { preferences, usePreferences } from '../shell/preferences.ts';
import { download } from './download.ts';
import { svgFonts } from './svg-fonts.ts';

type Form = 'two-hand' | 'process';

/** The charts of a method, sheet by sheet as they print, and every way to take the record out. */
export function ChartPage(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const { paper, grouping, unit: deskUnit } = usePreferences();
  const [form, setForm] = useState<Form>('two-hand');
  const [cycle, setCycle] = useState<number>();
  const [unit, setUnit] = useState<TimeUnit>(deskUnit === 'hours' ? 'seconds' : deskUnit);
  const [message, setMessage] = useState<string>();
  const method = study.methods.find((item) => item.id === methodId);
  const drawn = useMemo(() => {
    if (method === undefined) return undefined;
    const facts = chartFacts(study, method.id, { cycle });
    if (!facts.ok) return { pages: [] as readonly Scene[], fault: facts.error.message };
    const pages =
      form === 'two-hand'
        ? twoHandChart(facts.value, { paper, unit, grouping })
        : processChart(facts.value, { paper });
    return { pages, fault: undefined };
  }, [study, method, cycle, form, paper, unit, grouping]);
  if (method === undefined || drawn === undefined) {
    return (
      <main className="chart-page">
        <p className="soft">There is no method yet. Open a film on the record desk first.</p>
      </main>
    );
  }
  const name = `${study.title} - ${method.name}`;
  const title = drawn.pages[0]?.title ?? name;
  const saveSvg = async () => {
    const fonts = await svgFonts();
    drawn.pages.forEach((page, index) => {
      const file = drawn.pages.length === 1 ? `${name}.svg` : `${name} ${index + 1}.svg`;
      download(file, new Blob([sceneToSvg(page, { fonts })], { type: 'image/svg+xml' }));
    });
  };
  const savePdf = async () => {
    setMessage('Writing the PDF …');
    const answer = await api.pdf({ pages: drawn.pages, paper, title, language: 'en' });
    setMessage(
      answer.ok
        ? undefined
        : failureFindings(answer.error)
            .map((item) => item.message)
            .join(' '),
    );
    if (answer.ok) download(`${name}.pdf`, answer.value);
  };
  const saveText = (extension: string, type: string, text: Result<string, Finding>) => {
    setMessage(text.ok ? undefined : text.error.message);
    if (text.ok) download(`${name}.${extension}`, new Blob([text.value], { type }));
  };
  return (
    <main className="chart-page">
      <section className="chart-choices" aria-label="What to chart">
        <Choice
          label="Method"
          value={method.id}
          onChange={(id) => {
            setCycle(undefined);
            desk.chooseMethod(id);
          }}
          options={study.methods.map((item) => [item.id, item.name])}
        />
        <Choice
          label="Form"
          value={form}
          onChange={(value) => setForm(value as Form)}
          options={[
            ['two-hand', 'two-hand chart, to scale'],
            ['process', 'two-handed process chart'],
          ]}
        />
        <Choice
          label="Cycle"
          value={cycle === undefined ? '' : String(cycle)}
          onChange={(value) => setCycle(value === '' ? undefined : Number(value))}
          options={[
            ['', method.cycles.items.length === 0 ? 'the whole row' : 'first typical'],
            ...method.cycles.items.map((item, index): [string, string] => [
              String(index + 1),
              `${index + 1}${item.setAside === undefined ? '' : ' (set aside)'}`,
            ]),
          ]}
        />
        {form === 'two-hand' ? (
          <>
            <Choice
              label="Unit"
              value={unit}
              onChange={(value) => setUnit(value as TimeUnit)}
              options={timeUnitNames.map((item) => [item, timeUnits[item].name])}
            />
            <Choice
              label="Effective motions after"
              value={grouping}
              onChange={(value) => preferences.change({ grouping: value as GroupingId })}
              options={Object.values(groupings).map((item) => [item.id, item.name])}
            />
          </>
        ) : null}
        <Choice
          label="Paper"
          value={paper}
          onChange={(value) => preferences.change({ paper: value as 'a4' | 'letter' })}
          options={[
            ['a4', 'A4'],
            ['letter', 'Letter'],
          ]}
        />
        <div className="actions">
          <button type="button" className="primary" onClick={() => window.print()}>
            Print
          </button>
          <button type="button" onClick={() => void savePdf()}>
            PDF
          </button>
          <button type="button" onClick={() => void saveSvg()}>
            SVG
          </button>
        </div>
        <div className="actions" role="group" aria-label="Take the record out">
          <button type="button" onClick={() => saveText('csv', 'text/csv', motionsToCsv(study, method.id))}>
            Motions (CSV)
          </button>
          <button type="button" onClick={() => saveText('vtt', 'text/vtt', motionsToVtt(study, method.id))}>
            Captions (VTT)
          </button>
          <button
            type="button"
            onClick={() =>
              download(
                `${study.title}.evenhand.json`,
                new Blob([writeStudy(study)], { type: 'application/json' }),
              )
            }
          >
            Study (JSON)
          </button>
        </div>
        <p role="status">{message}</p>
      </section>
      {drawn.fault === undefined ? null : (
        <p className="fault" role="alert">
          {drawn.fault}
        </p>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section className={`sheets ${paper}`} aria-label="Sheets" tabIndex={0}>
        {drawn.pages.map((page, index) => {
          const sheet = `sheet-${index + 1}`;
          return <SheetView key={sheet} page={page} id={sheet} />;
        })}
      </section>
    </main>
  );
}

/** One sheet as the SVG it prints as. The markup is ours alone: every text in it was escaped by the painter. */
function SheetView(props: { readonly page: Scene; readonly id: string }) {
  const svg = useMemo(() => sceneToSvg(props.page, { idPrefix: props.id }), [props.page, props.id]);
  const place = (host: HTMLElement | null) => {
    if (host === null) return;
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    host.replaceChildren(document.importNode(parsed, true));
  };
  return <figure className="sheet" ref={place} />;
}

function Choice(props: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string) => void;
}) {
  return (
    <label className="field-choice">
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.onChange(event.target.value)}>
        {props.options.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}
