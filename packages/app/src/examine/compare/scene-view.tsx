import type { Scene } from '@evenhand/core/ground/scene';
import { type Look, looks, sceneToSvg } from '@evenhand/draw';
import { useMemo } from 'react';

/** A scene as SVG on the page. The markup is ours alone: every text in it was escaped by the painter. */
export function SceneView(props: {
  readonly scene: Scene;
  readonly look: keyof typeof looks;
  readonly id: string;
}) {
  const { scene, id } = props;
  const look: Look = looks[props.look];
  const svg = useMemo(
    () => sceneToSvg(scene, { idPrefix: id, look, unit: 'px', background: false }),
    [scene, id, look],
  );
  const place = (host: HTMLElement | null) => {
    if (host === null) return;
    const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    host.replaceChildren(document.importNode(parsed, true));
  };
  return <figure className="scene" ref={place} />;
}
