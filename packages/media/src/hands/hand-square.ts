import type { Palm } from './palms.ts';
import type { Point, Square } from './picture.ts';

/*
 * Which part of the picture the second model looks at. The factors are those published with the models (MediaPipe,
 * hand_landmark_landmarks_to_roi.pbtxt; those of the palm from memory of palm_detection_detection_to_roi.pbtxt).
 */

/** Landmarks of the palm and the first finger joints: they stay together whatever the fingers do. */
const steadyLandmarks = [0, 1, 2, 3, 5, 6, 9, 10, 13, 14, 17, 18];

/** The square around a hand whose palm was found, turned so that the fingers point up. */
export function squareOfPalm({ x, y, width, height, points }: Palm): Square {
  const angle = uprightAngle(points[0] as Point, points[2] as Point);
  const long = Math.max(width, height);
  // Half the box towards the fingers.
  return shifted({ x: x + width / 2, y: y + height / 2, side: long * 2.6, angle }, 0.5 * height);
}

/** The square around a hand in the next frame. */
export function squareOfLandmarks(landmarks: readonly Point[]): Square {
  const at = (index: number) => landmarks[index] as Point;
  const knuckles = {
    x: (at(5).x + at(13).x) / 4 + at(9).x / 2,
    y: (at(5).y + at(13).y) / 4 + at(9).y / 2,
  };
  const angle = uprightAngle(at(0), knuckles);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  // Bounds along the hand and across it.
  const across = steadyLandmarks.map((index) => at(index).x * cos + at(index).y * sin);
  const along = steadyLandmarks.map((index) => at(index).y * cos - at(index).x * sin);
  const [left, right] = [Math.min(...across), Math.max(...across)];
  const [top, bottom] = [Math.min(...along), Math.max(...along)];
  const [u, v] = [(left + right) / 2, (top + bottom) / 2];
  const middle = { x: u * cos - v * sin, y: u * sin + v * cos };
  const side = 2 * Math.max(right - left, bottom - top);
  return shifted({ ...middle, side, angle }, 0.1 * (bottom - top));
}

/** Moves a square towards the fingers. */
function shifted(square: Square, by: number): Square {
  return {
    ...square,
    x: square.x + by * Math.sin(square.angle),
    y: square.y - by * Math.cos(square.angle),
  };
}

/** The turn, clockwise, that a hand which points up would need to lie as this one does; -π to π. */
function uprightAngle(wrist: Point, fingers: Point): number {
  return Math.atan2(fingers.x - wrist.x, wrist.y - fingers.y);
}
