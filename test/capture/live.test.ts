import { spawn } from 'node:child_process';
import { appendFileSync, createReadStream, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CaptureFile } from '../../src/capture/capture-file.ts';
import { LiveSession } from '../../src/capture/live-session.ts';
import { ObdClient } from '../../src/capture/obd-client.ts';
import { openPort } from '../../src/capture/open-port.ts';
import { newCarState } from '../../src/capture/simulated-car/car-state.ts';
import { type ServedCar, serveCar } from '../../src/capture/simulated-car/serve-car.ts';
import { readCapture } from '../../src/recording/bus/read-capture.ts';

const N = 400;
const ramp = (from: number, step: number) => Float64Array.from({ length: N }, (_, i) => from + step * i);
const state = () =>
  newCarState(
    {
      label: 'made',
      timeS: ramp(0, 0.05),
      channels: {
        tankPressureGaugePa: ramp(-10, -5),
        purgeDuty: ramp(0, 0.002),
        engineSpeedRpm: ramp(700, 1),
        manifoldAbsPa: ramp(30_000, 10),
        vehicleSpeedMPerS: ramp(0, 0.01),
        shortTrim: ramp(0, 0.0001),
        fuelLevel: ramp(0.5, 0),
        barometricPa: ramp(100_000, 0),
      },
    },
    {
      codes: { confirmed: ['P0456'], pending: ['P0442'], permanent: ['P0456'] },
      lampOn: true,
      incompleteMonitors: ['evaporative system'],
    },
  );

let folder: string;
let car: ServedCar;
const until = async (is: () => boolean): Promise<void> => {
  while (!is()) await new Promise((resolve) => void setTimeout(resolve, 5));
};
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'capture-'));
  car = await serveCar(state());
});
afterEach(async () => {
  await car.close();
  rmSync(folder, { recursive: true });
});
const begin = (path: string) => {
  const file = new CaptureFile(path);
  const session = new LiveSession({ open: () => openPort(car.address), file, label: 'live' });
  session.start();
  return { file, session };
};
const sampleCount = (reading: Awaited<ReturnType<typeof readCapture>>): number =>
  reading.report.items.reduce((sum, { samples }) => sum + samples, 0);

describe('live capture from the simulated car', () => {
  it('reads codes and readiness, samples, and the file holds all that came', async () => {
    const path = join(folder, 'a.log');
    const { file, session } = begin(path);
    await until(() => session.samples > 200);
    await session.stop();
    file.close();
    const kept = await readCapture(createReadStream(path), { fileName: 'a.log' });
    expect(sampleCount(kept)).toBe(session.samples);
    expect(kept.codes.map(({ code, status }) => `${code} ${status}`)).toEqual([
      'P0456 confirmed',
      'P0442 pending',
      'P0456 permanent',
    ]);
    expect(kept.status.sinceClear).toMatchObject({ lampOn: true, codeCount: 1 });
    expect(kept.status.inUse).toMatchObject({ EVAPCOMP: 16, EVAPCOND: 50 });
    expect(kept.results.map(({ monitorId, passed }) => [monitorId, passed])).toEqual([
      [0x3c, true],
      [0x3d, true],
    ]);
    expect(Object.keys(kept.recording!.channels)).toContain('fuelLevel');
    expect(kept.recording).toEqual({ ...session.reading().recording, label: 'a.log' });
    expect(kept.units[0]!.transport.incomplete).toBeLessThanOrEqual(1);
  });

  it('connects again when the adapter was pulled out; every pause is marked and nothing is lost', async () => {
    const path = join(folder, 'b.log');
    const { file, session } = begin(path);
    for (let k = 1; k <= 3; k++) {
      const now = session.samples;
      await until(() => session.samples > now + 60);
      car.unplug();
      await until(() => session.state === 'waiting');
      await car.plug();
      await until(() => session.state === 'sampling');
    }
    const now = session.samples;
    await until(() => session.samples > now + 30);
    await session.stop();
    file.close();
    const kept = await readCapture(createReadStream(path), { fileName: 'b.log' });
    expect(session.reconnections).toBe(3);
    expect(kept.report.pauses.length).toBe(3);
    expect(sampleCount(kept)).toBe(session.samples);
  });

  it('what was recorded survives the death of the program', async () => {
    const path = join(folder, 'c.log');
    const script = `
      const { CaptureFile } = await import(${JSON.stringify(join(process.cwd(), 'src/capture/capture-file.ts'))});
      const { LiveSession } = await import(${JSON.stringify(join(process.cwd(), 'src/capture/live-session.ts'))});
      const { openPort } = await import(${JSON.stringify(join(process.cwd(), 'src/capture/open-port.ts'))});
      new LiveSession({ open: () => openPort(${JSON.stringify(car.address)}), file: new CaptureFile(${JSON.stringify(path)}),
        label: 'x', onSample: () => process.stdout.write('.') }).start();`;
    const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let told = 0;
    child.stdout.on('data', (bytes: Buffer) => {
      told += bytes.length;
    });
    await until(() => told > 150);
    child.kill('SIGKILL');
    await new Promise((resolve) => void child.once('close', resolve));
    const kept = await readCapture(createReadStream(path), { fileName: 'c.log' });
    expect(sampleCount(kept)).toBeGreaterThanOrEqual(told);
    // The next start goes on in the same file, mends a cut line and marks the time between.
    appendFileSync(path, '(1700000000.0');
    const { file, session } = begin(path);
    await until(() => session.samples > 30);
    await session.stop();
    file.close();
    const both = await readCapture(createReadStream(path), { fileName: 'c.log' });
    expect(both.report.skipped.some(({ reason, count }) => reason === 'bad-stamp' && count === 1)).toBe(true);
    expect(readFileSync(path, 'latin1')).toContain('#0000000000000000');
    expect(sampleCount(both)).toBe(sampleCount(kept) + session.samples);
  });

  it('only reads; clearing codes is a call of its own and leaves permanent codes and counters', async () => {
    const client = new ObdClient(() => {});
    expect(() => client.ask('all', [0x04])).toThrow(/only read/);
    expect(() => client.ask('all', [0x08, 0x01])).toThrow(/only read/);
    const { file, session } = begin(join(folder, 'd.log'));
    await until(() => session.state === 'sampling');
    const replies = await session.clearCodes();
    expect([...replies[0]!.message]).toEqual([0x44]);
    const now = session.samples;
    await until(() => session.samples > now + 20);
    const { codes, status } = session.reading();
    await session.stop();
    file.close();
    expect(codes).toEqual([{ code: 'P0456', status: 'permanent', unit: '7E8' }]);
    expect(status).toMatchObject({ warmUpsSinceClear: 0, distanceSinceClearM: 0, inUse: { EVAPCOMP: 16 } });
    expect(status.sinceClear!.monitors.filter((m) => m.supported && !m.complete).length).toBe(4);
  });

  it('one request is outstanding at a time', async () => {
    const client = new ObdClient(() => {});
    const first = client.ask('all', [0x03]);
    expect(() => client.ask('all', [0x07])).toThrow(/outstanding/);
    client.abort();
    expect(await first).toEqual([]);
  });
});
