import { memo } from 'react';
import { SceneView } from '../examine/compare/scene-view.tsx';

/** A scene on the page that is put there again only when it is another one: large ones take long to be read in. */
export const ScenePicture = memo(SceneView);
