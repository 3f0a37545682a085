import { z } from 'zod';

/**
 * What is known of a car. Unknown stays absent and gets a prior in the finding, never a hidden default.
 * SI units; a unit stands in every name.
 */
export const LAYOUTS = [
  'engine-vacuum',
  'engine-off',
  'pump-reference',
  'sealed-tank',
  'saddle-tank',
  'two-path-purge',
] as const;
export type LayoutId = (typeof LAYOUTS)[number];

const known = (meaning: string) => z.number().describe(meaning);

export const carSchema = z
  .strictObject({
    schema: z.literal('vaporwright-car-1').describe('Name and version of this format'),
    label: z.string().min(1).describe('What a person calls the car'),
    layout: z.enum(LAYOUTS).describe('How its vapour parts are joined'),
    onBoardRefuellingRecovery: z.boolean().optional().describe('Large canister, sealed narrow filler'),
    filler: z.enum(['capped', 'capless']).optional().describe('How the filler is closed'),
    tankVolumeM3: known('Tank volume, brim full, m3').positive().optional(),
    fillerNeckVolumeM3: known('Filler neck volume, m3').nonnegative().optional(),
    canisterFreeVolumeM3: known('Gas volume of canister and its hoses, m3').positive().optional(),
    pressureSensor: z
      .strictObject({
        minGaugePa: known('Lower end of the nominal range, Pa gauge'),
        maxGaugePa: known('Upper end of the nominal range, Pa gauge'),
        minV: known('Output at the lower end, V').optional(),
        maxV: known('Output at the upper end, V').optional(),
        supplyV: known('Supply, V').positive().optional(),
        gainTolerance: known('Limit of the gain error as a fraction of the reading').nonnegative().optional(),
        offsetTolerancePa: known('Limit of the zero error, Pa').nonnegative().optional(),
      })
      .optional(),
    fuel: z
      .strictObject({
        reidVapourPressurePa: z
          .strictObject({ low: known('Pa').positive(), high: known('Pa').positive() })
          .optional()
          .describe('Range of the Reid vapour pressure of the fuel as sold, for the season'),
        ethanolVolumeFraction: known('0..1; counts where no range of the Reid vapour pressure is given')
          .min(0)
          .max(1)
          .optional(),
      })
      .optional(),
    monitor: z
      .strictObject({
        drawTargetGaugePa: known('Gauge pressure that ends the draw, Pa').negative().optional(),
        drawTimeOutS: known('Longest draw, s').positive().optional(),
      })
      .optional(),
    demo: z.boolean().optional().describe('True for invented cars'),
  })
  .describe('A car as known to the technician');

export type Car = z.infer<typeof carSchema>;
