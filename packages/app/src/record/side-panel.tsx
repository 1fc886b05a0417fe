import { useState } from 'react';
import { CyclesPanel } from './cycles-panel.tsx';
import type { RecordDesk } from './desk.ts';
import { FilmPanel } from './film-panel.tsx';
import { MotionList } from './motion-list.tsx';
import { MotionPanel } from './motion-panel.tsx';
import { TracksPanel } from './tracks/tracks-panel.tsx';

const tabs = ['motions', 'cycles', 'tracks', 'film'] as const;
const titles = { motions: 'Motions', cycles: 'Cycles', tracks: 'Tracks', film: 'Film and study' } as const;

/** At the side: the selected motion and the list of all, the cycles, where the hands are, and what is known of the film. */
export function SidePanel(props: { readonly desk: RecordDesk }) {
  const [tab, setTab] = useState<(typeof tabs)[number]>('motions');
  return (
    <aside className="side" aria-label="Details">
      <div className="tabs" role="tablist" aria-label="Details">
        {tabs.map((name) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`tab-${name}`}
            aria-selected={tab === name}
            aria-controls="side-body"
            onClick={() => setTab(name)}
          >
            {titles[name]}
          </button>
        ))}
      </div>
      <div className="side-body" role="tabpanel" id="side-body" aria-labelledby={`tab-${tab}`}>
        {tab === 'motions' ? (
          <>
            <MotionPanel desk={props.desk} />
            <MotionList desk={props.desk} />
          </>
        ) : tab === 'cycles' ? (
          <CyclesPanel desk={props.desk} />
        ) : tab === 'tracks' ? (
          <TracksPanel desk={props.desk} />
        ) : (
          <FilmPanel desk={props.desk} />
        )}
      </div>
    </aside>
  );
}
