/** How the hand is held, in degrees: yaw added to the direction of the forearm (clockwise from above), pitch of the fingers down, roll of the thumb up. */
export interface Attitude {
  readonly yaw: number;
  readonly pitch: number;
  readonly roll: number;
}

export const attitudes = {
  rest: { yaw: 0, pitch: 14, roll: 6 },
  pick: { yaw: 0, pitch: 20, roll: 8 },
  assemble: { yaw: 0, pitch: 16, roll: 12 },
  hold: { yaw: 6, pitch: 8, roll: 42 },
  deliver: { yaw: -10, pitch: 16, roll: 26 },
} as const satisfies Record<string, Attitude>;
