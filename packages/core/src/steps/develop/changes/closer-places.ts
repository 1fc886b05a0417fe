import type { ChangeRule } from './change.ts';
import { broughtTo } from './work-parts.ts';

/** Bins stand on an arc of this radius about the work, where they can. Ours, within the normal area of small women. */
const nearRadius = 230;
/** The lip of a bin that feeds by gravity stands so far from the work, millimetres. Ours. */
const lipRadius = 150;
/** Room that a lip takes along the arc, millimetres. Ours. */
const lipRoom = 90;

export const closerPlaces: ChangeRule = {
  code: 'closer-places',
  name: 'Closer places',
  what: 'Bins and tools stand on an arc close about the work.',
  principle: 11,
  apply: (work) => broughtTo(work, nearRadius, ({ kind }) => kind === 'bin' || kind === 'tool'),
};

export const gravityFeed: ChangeRule = {
  code: 'gravity-feed',
  name: 'Bins that feed by gravity',
  what: 'Chutes bring the parts from the bins to a lip close to the work.',
  principle: 12,
  supposes: `The parts slide. A lip stands ${lipRadius} mm from the work and takes ${lipRoom} mm of the arc.`,
  apply: (work) => {
    // More lips than half of the arc has room for would stand in each other's way.
    const bins = work.places.filter(
      ({ kind, at, stays }) => kind === 'bin' && at !== undefined && stays !== true,
    );
    if (bins.length * lipRoom > Math.PI * lipRadius) return undefined;
    return broughtTo(work, lipRadius, ({ kind }) => kind === 'bin', {
      more: ({ name }) => ({ name: `${name}, lip`.slice(0, 200) }),
    });
  },
};
