import { studySheetPages, type TimeStudySheet } from '@evenhand/core/define';
import type { Scene } from '@evenhand/core/ground/scene';
import type { Study } from '@evenhand/core/ground/study';
import { sceneToSvg } from '@evenhand/draw';
import { useEffect, useMemo, useRef, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import { download } from '../chart/download.ts';
import { api } from '../editor/page-ports.ts';
import { failureFindings } from '../editor/server-api.ts';
import { preferences, usePreferences } from '../shell/preferences.ts';

/** The server sets so many pages at once. */
const mostPages = 500;

/** The study sheet on paper and as PDF: the same drawing, made when it is asked for. */
export function PrintSheet(props: { readonly study: Study; readonly sheet: TimeStudySheet }) {
  const { study, sheet } = props;
  const { paper } = usePreferences();
  const [message, setMessage] = useState<string>();
  const pages = () =>
    studySheetPages(study, sheet, { paper, printed: new Date().toISOString().slice(0, 10) });
  const printed = usePrinted(pages);
  const savePdf = async () => {
    setMessage('Writing the PDF …');
    const made = pages();
    if (made.length > mostPages) return setMessage(tooLong(made.length));
    const title = `${study.title} - ${sheet.timeStudy.name}`;
    const answer = await api.pdf({ pages: made, paper, title, language: 'en' });
    setMessage(
      answer.ok
        ? undefined
        : failureFindings(answer.error)
            .map((item) => item.message)
            .join(' '),
    );
    if (answer.ok) download(`${title}.pdf`, answer.value);
  };
  return (
    <>
      <span role="status" className="soft">
        {message}
      </span>
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
      <div className="actions">
        <button type="button" onClick={() => window.print()}>
          Print
        </button>
        <button type="button" onClick={() => void savePdf()}>
          PDF
        </button>
      </div>
      {printed === undefined
        ? null
        : createPortal(
            <div className="print-sheets" aria-hidden="true">
              {printed.map((page, index) => {
                const name = `study-sheet-${index + 1}`;
                return <PrintedPage key={name} page={page} id={name} />;
              })}
            </div>,
            document.body,
          )}
    </>
  );
}

function tooLong(count: number): string {
  return `The sheet would have ${count} pages, and at most ${mostPages} are set at once. Choose a time study with fewer cycles.`;
}

/** The pages while the browser prints, also when printing was asked for by its own menu. */
function usePrinted(pages: () => readonly Scene[]): readonly Scene[] | undefined {
  const [printed, setPrinted] = useState<readonly Scene[]>();
  const latest = useRef(pages);
  latest.current = pages;
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

/** One page as SVG. The markup is ours alone: every text in it was escaped by the painter. */
function PrintedPage(props: { readonly page: Scene; readonly id: string }) {
  const { page, id } = props;
  const svg = useMemo(() => sceneToSvg(page, { idPrefix: id }), [page, id]);
  const place = (host: HTMLElement | null) => {
    if (host === null) return;
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    host.replaceChildren(document.importNode(parsed, true));
  };
  return <figure className={page.width > page.height ? 'across' : 'upright'} ref={place} />;
}
