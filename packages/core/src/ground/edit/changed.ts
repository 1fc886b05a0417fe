/** New values of some fields; `null` takes an optional field away. */
export type Changed<Of, Key extends keyof Of = keyof Of> = {
  readonly [Field in Key]?: Exclude<Of[Field], undefined> | (undefined extends Of[Field] ? null : never);
};
