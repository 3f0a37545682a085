/** People, their roles and sessions, and links to a single job. */
import { z } from 'zod';

/** Each may do what the ones after it may. */
export const ROLES = ['owner', 'technician', 'reader'] as const;
export type Role = (typeof ROLES)[number];

const name = z.string().trim().min(1).max(80);
/** Length is what counts (NIST SP 800-63B 5.1.1.2 asks for 8 at least; common practice goes further). */
export const SHORTEST_PASSWORD = 10;
const newPassword = z.string().min(SHORTEST_PASSWORD).max(200);

export const userSchema = z.strictObject({ id: z.uuid(), name, role: z.enum(ROLES) });
export type User = z.infer<typeof userSchema>;

export const sessionSchema = z
  .strictObject({
    user: userSchema.nullable(),
    needsLogin: z.boolean().describe('Nothing else answers until somebody signs in'),
    needsFirst: z.boolean().describe('There is no account yet; the first is made with the printed link'),
    role: z.enum(ROLES).nullable().describe('What this session may do; null before signing in'),
    csrf: z.string().describe('To be sent with every request that changes something'),
  })
  .describe('Who is asking');
export type Session = z.infer<typeof sessionSchema>;

export const signInSchema = z.strictObject({ name, password: z.string().max(200) });
export const firstAccountSchema = z.strictObject({
  token: z.string().max(100).describe('From the link that was printed'),
  name,
  password: newPassword,
});

export const accountSchema = z.strictObject({
  ...userSchema.shape,
  isActive: z.boolean(),
  createdAt: z.iso.datetime(),
});
export type Account = z.infer<typeof accountSchema>;
export const accountListSchema = z.strictObject({ accounts: z.array(accountSchema).readonly() });
export const newAccountSchema = z.strictObject({ name, role: z.enum(ROLES), password: newPassword });
export const accountChangeSchema = z
  .strictObject({
    role: z.enum(ROLES).exactOptional(),
    isActive: z.boolean().exactOptional(),
    password: newPassword.exactOptional(),
  })
  .describe('What is given changes; a new password or an end ends all sessions of that person');
export const accountParamsSchema = z.object({ uid: z.uuid() });

export const newShareSchema = z.strictObject({
  label: z.string().max(120).exactOptional().describe('Whom it is for'),
  days: z.int().min(1).max(366).exactOptional().describe('How long it is valid; 30 when absent'),
});
export const shareSchema = z.strictObject({
  id: z.uuid(),
  label: z.string(),
  createdAt: z.iso.datetime(),
  expiresAt: z.iso.datetime(),
});
export type Share = z.infer<typeof shareSchema>;
export const newShareAnswerSchema = z.strictObject({
  share: shareSchema,
  url: z.string().describe('Shown once: the store keeps a hash of it only'),
});
export const shareListSchema = z.strictObject({ shares: z.array(shareSchema).readonly() });
export const shareParamsSchema = z.object({ id: z.uuid(), sid: z.uuid() });
export const sharedParamsSchema = z.object({ token: z.string().min(20).max(100) });

export const securityEventSchema = z.strictObject({
  at: z.iso.datetime(),
  what: z.string(),
  who: z.string().nullable(),
  from: z.string().describe('Address'),
});
export type SecurityEvent = z.infer<typeof securityEventSchema>;
export const securityLogSchema = z.strictObject({ events: z.array(securityEventSchema).readonly() });
