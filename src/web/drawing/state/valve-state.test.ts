import { describe, expect, it } from 'vitest';
import type { LayoutId } from '../../../system/car.ts';
import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import { drawnNetwork, play } from '../../simulation/play.ts';
import type { Playable } from '../../simulation/procedures.ts';
import { RunView } from './run-view.ts';
import { openShare, valveState } from './valve-state.ts';

function viewOf(layout: LayoutId, procedure: Playable, fault?: Fault): RunView {
  const system = { layout, closure: 'capped', hasRecovery: true } as const;
  const faults = fault === undefined ? [] : [fault];
  const run = play({ system, faults, procedure, isCoarse: true }, () => 0);
  const own = faults.filter((f) => faultKind(f.kind).part !== 'ventFilter');
  return new RunView(run, drawnNetwork(system, faults), drawnNetwork(system, []), drawnNetwork(system, own));
}

const middleOf = (view: RunView, phase: string): number => {
  const step = view.run.steps.find((s) => s.phase === phase);
  if (step === undefined) throw new Error(`the run has no phase '${phase}'`);
  return (step.fromS + step.toS) / 2;
};

describe('state of a valve', () => {
  it('follows the commands of a sound car through a vacuum draw', () => {
    const view = viewOf('engine-vacuum', 'vacuum-draw');
    view.moveTo(middleOf(view, 'baseline'));
    expect(valveState(view, 'purge')).toEqual({ kind: 'shut' });
    expect(valveState(view, 'vent')).toEqual({ kind: 'open' });
    view.moveTo(middleOf(view, 'draw'));
    expect(valveState(view, 'purge')?.kind).toBe('pulsing');
    expect(valveState(view, 'vent')).toEqual({ kind: 'shut' });
    view.moveTo(middleOf(view, 'hold'));
    expect(valveState(view, 'purge')).toEqual({ kind: 'shut' });
  });

  it.each([
    ['purge-seeping', 'purge', 'hold', 'seeps'],
    ['purge-stuck-open', 'purge', 'hold', 'stuckOpen'],
    ['purge-stuck-shut', 'purge', 'draw', 'stuckShut'],
    ['vent-not-sealing', 'vent', 'hold', 'seeps'],
    ['vent-circuit-open', 'vent', 'hold', 'stuckOpen'],
    ['vent-stuck-shut', 'vent', 'baseline', 'stuckShut'],
    ['fill-limit-stuck-shut', 'fillLimitValve', 'hold', 'stuckShut'],
  ])('tells what %s does from what was commanded', (kind, passage, phase, expected) => {
    const view = viewOf('engine-vacuum', 'vacuum-draw', { kind });
    view.moveTo(middleOf(view, phase));
    expect(valveState(view, passage)?.kind).toBe(expected);
  });

  it('does not blame the vent valve for a choked filter', () => {
    const view = viewOf('engine-vacuum', 'purge-drive', { kind: 'vent-choked' });
    view.moveTo(middleOf(view, 'purge'));
    expect(valveState(view, 'vent')).toEqual({ kind: 'open' });
  });

  it('opens the ejector’s check valve under boost and shuts the manifold’s', () => {
    const view = viewOf('two-path-purge', 'purge-drive');
    view.moveTo(50);
    expect(valveState(view, 'ejectorCheck')?.kind).toBe('open');
    expect(valveState(view, 'manifoldCheck')?.kind).toBe('shut');
    view.moveTo(15);
    expect(valveState(view, 'manifoldCheck')?.kind).toBe('open');
  });

  it('draws a shut valve shut and an open one open', () => {
    expect(openShare({ kind: 'shut' })).toBe(0);
    expect(openShare({ kind: 'stuckShut' })).toBe(0);
    expect(openShare({ kind: 'open' })).toBe(1);
    expect(openShare({ kind: 'pulsing', share: 0.3 })).toBeCloseTo(0.3);
  });
});
