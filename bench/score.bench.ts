import { printRace, type Timings } from './harness.ts';
import { openBenchPage } from './page.ts';
import type { RedrawTimes } from './score-page.ts';

/** The two-hand score repainted, and one edit from apply to repaint, in a real browser. */

const { inPage, close } = await openBenchPage('score', { include: ['zod'] });
try {
  for (const { motions, shown, timings } of await inPage<RedrawTimes[]>('redraws')) {
    printRace(
      `Repaint of the score, ${motions.toLocaleString('en')} motions, ${shown.toLocaleString('en')} in sight`,
      timings,
    );
  }
  for (const { motions, shown, timings } of await inPage<RedrawTimes[]>('ribbonRedraws')) {
    const sight = `${motions.toLocaleString('en')} motions, ${shown.toLocaleString('en')} in sight`;
    printRace(`Score and overview with proposals and the speed ribbon, ${sight}`, timings);
  }
  printRace('One edit, from apply to repaint', await inPage<Timings[]>('editToRepaint'));
} finally {
  await close();
}
