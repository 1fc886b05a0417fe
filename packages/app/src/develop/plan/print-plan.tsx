import { benchPlan, type PlanPaper, type Trips } from '@evenhand/core/develop';
import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Scene } from '@evenhand/core/ground/scene';
import type { Study, Work } from '@evenhand/core/ground/study';
import { sceneToSvg } from '@evenhand/draw';
import { useState } from 'react';
import { download } from '../../chart/download.ts';
import { svgFonts } from '../../chart/svg-fonts.ts';
import { api } from '../../editor/page-ports.ts';
import { failureFindings } from '../../editor/server-api.ts';
import { planLookOf } from './plan-look.ts';

/** The plan for the workshop that builds it, to scale. */
export function PrintPlan(props: {
  readonly study: Study;
  readonly work: Work;
  readonly trips: Trips | undefined;
  readonly period: number | undefined;
}) {
  const [scale, setScale] = useState<5 | 10>(5);
  const [paper, setPaper] = useState<PlanPaper>('a3');
  const [message, setMessage] = useState('');
  const { study, work, trips, period } = props;
  const name = `${work.title} - bench 1-${scale}`;
  const sheet = (): Result<Scene, Finding> =>
    benchPlan(work, planLookOf(study, work, { scale, paper, trips, period }));
  const savePdf = async () => {
    const made = sheet();
    if (!made.ok) return setMessage(made.error.message);
    setMessage('Writing the PDF …');
    const answer = await api.pdf({ pages: [made.value], paper, title: made.value.title, language: 'en' });
    if (answer.ok) download(`${name}.pdf`, answer.value);
    const faults = answer.ok ? [] : failureFindings(answer.error);
    setMessage(faults.map((item) => item.message).join(' '));
  };
  const saveSvg = async () => {
    const made = sheet();
    if (!made.ok) return setMessage(made.error.message);
    setMessage('');
    const text = sceneToSvg(made.value, { fonts: await svgFonts() });
    download(`${name}.svg`, new Blob([text], { type: 'image/svg+xml' }));
  };
  return (
    <div className="actions plan-print">
      <span>For the workshop</span>
      <select
        aria-label="Scale"
        value={scale}
        onChange={(event) => setScale(event.target.value === '5' ? 5 : 10)}
      >
        <option value={5}>1:5</option>
        <option value={10}>1:10</option>
      </select>
      <select
        aria-label="Sheet"
        value={paper}
        onChange={(event) => setPaper(event.target.value as PlanPaper)}
      >
        <option value="a3">A3</option>
        <option value="a4">A4</option>
        <option value="letter">Letter</option>
      </select>
      <button type="button" onClick={() => void savePdf()}>
        PDF
      </button>
      <button type="button" onClick={() => void saveSvg()}>
        SVG
      </button>
      <span role="status" className="soft">
        {message}
      </span>
    </div>
  );
}
