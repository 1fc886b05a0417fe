import { type ComparisonFacts, proofPage } from '@evenhand/core/evaluate';
import type { Scene } from '@evenhand/core/ground/scene';
import type { Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { sceneToSvg } from '@evenhand/draw';
import { useEffect, useMemo, useRef, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import { download } from '../chart/download.ts';
import { svgFonts } from '../chart/svg-fonts.ts';
import { api } from '../editor/page-ports.ts';
import { failureFindings } from '../editor/server-api.ts';
import { preferences, usePreferences } from '../shell/preferences.ts';
import { comparisonName } from './comparison-edits.ts';

/** The proof on one page: as PDF, as SVG and on paper. */
export function PageActions(props: {
  readonly study: Study;
  readonly facts: ComparisonFacts;
  readonly unit: TimeUnit;
}) {
  const { study, facts, unit } = props;
  const { paper } = usePreferences();
  const [message, setMessage] = useState('');
  const name = `${study.title} - ${comparisonName(study, facts.comparison)}`;
  const page = () => proofPage(study, facts, { paper, unit, date: new Date().toISOString().slice(0, 10) });
  const printed = usePrinted(page);
  const savePdf = async () => {
    const scene = page();
    setMessage('Writing the PDF …');
    const answer = await api.pdf({ pages: [scene], paper, title: scene.title, language: 'en' });
    if (answer.ok) download(`${name}.pdf`, answer.value);
    const faults = answer.ok ? [] : failureFindings(answer.error);
    setMessage(faults.map((item) => item.message).join(' '));
  };
  const saveSvg = async () => {
    const text = sceneToSvg(page(), { fonts: await svgFonts() });
    download(`${name}.svg`, new Blob([text], { type: 'image/svg+xml' }));
  };
  return (
    <div className="actions">
      <span role="status">{message}</span>
      <label className="inline-choice">
        <span className="hidden">Paper</span>
        <select
          value={paper}
          onChange={(event) => preferences.change({ paper: event.target.value as 'a4' | 'letter' })}
        >
          <option value="a4">A4</option>
          <option value="letter">Letter</option>
        </select>
      </label>
      <button type="button" className="primary" onClick={() => void savePdf()}>
        PDF of one page
      </button>
      <button type="button" onClick={() => window.print()}>
        Print
      </button>
      <button type="button" onClick={() => void saveSvg()}>
        SVG
      </button>
      {printed === undefined
        ? null
        : createPortal(
            <div className="print-proof" aria-hidden="true">
              <PrintedPage page={printed} />
            </div>,
            document.body,
          )}
    </div>
  );
}

/** The page while the browser prints, also when printing was asked for by its own menu. */
function usePrinted(page: () => Scene): Scene | undefined {
  const [printed, setPrinted] = useState<Scene>();
  const latest = useRef(page);
  latest.current = page;
  useEffect(() => {
    const before = () => flushSync(() => setPrinted(latest.current()));
    const after = () => setPrinted(undefined);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  return printed;
}

/** The page as SVG. The markup is ours alone: every text in it was escaped by the painter. */
function PrintedPage(props: { readonly page: Scene }) {
  const { page } = props;
  const svg = useMemo(() => sceneToSvg(page, { idPrefix: 'proof' }), [page]);
  const place = (host: HTMLElement | null) => {
    if (host === null) return;
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    host.replaceChildren(document.importNode(parsed, true));
  };
  return <figure className={page.width > page.height ? 'across' : 'upright'} ref={place} />;
}
