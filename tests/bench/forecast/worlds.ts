/** How clients of a world get up a ladder. Nothing here is read by the forecast. */
export type ForecastWorld = {
  name: string;
  /** SD of ln(pace) between clients, and the pace of the middle client (1: the usual weeks are right). */
  between: number;
  middle: number;
  /** SD of ln(time) of a rung around the client's own pace. */
  within: number;
  /** Share of rungs on which the client is stuck, and how much longer those take. */
  stuck: number;
  stuckFactor: number;
  /** Each rung takes this much longer than the one before, beyond its usual weeks. */
  slowing: number;
  /** Share of clients placed part of the way through their first rung. */
  partWay: number;
  /** Days until the coach steps a client up: up to this many after the pass. */
  reviewDays: number;
};

/**
 * A usual time holds within a factor of 2 each way (common practice, no source), read as 80 of 100 clients: an SD of
 * ln(time) of 0.54 in all. How much of it is the client is nowhere published; here more than half. Own choices: one
 * rung in twelve is stuck for twice as long, a week until the next look, half of the clients are placed part-way.
 */
const ordinary: ForecastWorld = {
  name: 'ordinary',
  between: 0.4,
  middle: 1,
  within: 0.33,
  stuck: 1 / 12,
  stuckFactor: 2,
  slowing: 0,
  partWay: 0.5,
  reviewDays: 7,
};

/** The same client in other worlds, most of them with a spread or a usual time that the settings misjudge. */
export const FORECAST_WORLDS: readonly ForecastWorld[] = [
  ordinary,
  { ...ordinary, name: 'plain log-normal', stuck: 0, partWay: 0, reviewDays: 0 },
  { ...ordinary, name: 'clients alike', between: 0.15 },
  { ...ordinary, name: 'clients unlike', between: 0.7 },
  { ...ordinary, name: 'rungs steady', within: 0.15 },
  { ...ordinary, name: 'rungs uneven', within: 0.6 },
  { ...ordinary, name: 'usual too short', middle: 1.5 },
  { ...ordinary, name: 'usual too long', middle: 0.67 },
  { ...ordinary, name: 'slows higher up', slowing: 0.08 },
];
