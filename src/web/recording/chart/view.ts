/** What part of the time axis is seen, and how it moves. Seconds throughout. */
export interface View {
  readonly fromS: number;
  readonly toS: number;
}

const width = ({ fromS, toS }: View): number => toS - fromS;

/** Keeps a view inside the recording and no narrower than `narrowestS`. */
export function clampView(view: View, all: View, narrowestS: number): View {
  const wide = Math.min(width(all), Math.max(narrowestS, width(view)));
  const middle = (view.fromS + view.toS) / 2;
  const from = width(view) < narrowestS ? middle - wide / 2 : view.fromS;
  const fromS = Math.min(all.toS - wide, Math.max(all.fromS, from));
  return { fromS, toS: fromS + wide };
}

/** Moves by a share of what is seen; positive is later. */
export function pan(view: View, share: number): View {
  const by = share * width(view);
  return { fromS: view.fromS + by, toS: view.toS + by };
}

/** Makes what is seen `factor` times as wide about a time that stays where it is. */
export function zoom(view: View, factor: number, aboutS: number): View {
  return { fromS: aboutS - (aboutS - view.fromS) * factor, toS: aboutS + (view.toS - aboutS) * factor };
}

/** The view that shows times `a` and `b` at shares `x`, `y` of its width: two fingers that hold two times. */
export function pinch(a: number, b: number, x: number, y: number): View {
  const perShare = (b - a) / (y - x);
  return { fromS: a - x * perShare, toS: a + (1 - x) * perShare };
}

/** Shifts a view, if it must, so that a time is seen. */
export function reveal(view: View, timeS: number): View {
  if (timeS >= view.fromS && timeS <= view.toS) return view;
  return { fromS: timeS - width(view) / 2, toS: timeS + width(view) / 2 };
}

export const isWhole = (view: View, all: View): boolean => width(view) >= 0.999 * width(all);
