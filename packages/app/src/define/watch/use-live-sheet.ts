import { type TimeStudySheet, timeStudySheet } from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { useEffect, useRef, useState } from 'react';

/** Up to this many readings the figures follow each press, ms ahead of the next; above it they wait for a lull. Ours. */
const few = 3000;
const waits = { soon: 40, lull: 600 };

/**
 * The sheet of a time study that grows under the watch. It is worked out after the press has been drawn, so that the watch
 * never waits for it; the last one stands meanwhile.
 */
export function useLiveSheet(study: Study, timeStudy: TimeStudy): TimeStudySheet {
  const [sheet, setSheet] = useState(() => timeStudySheet(study, timeStudy));
  const worked = useRef<TimeStudy>(timeStudy);
  useEffect(() => {
    if (worked.current === timeStudy) return;
    const count = timeStudy.elements.reduce((sum, { readings }) => sum + readings.length, 0);
    const timer = setTimeout(
      () => {
        worked.current = timeStudy;
        setSheet(timeStudySheet(study, timeStudy));
      },
      count <= few ? waits.soon : waits.lull,
    );
    return () => clearTimeout(timer);
  }, [study, timeStudy]);
  return sheet;
}
