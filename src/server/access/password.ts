/** Passwords by Argon2id. */
import { hash, type Options, verify } from '@node-rs/argon2';

/** First choice of the OWASP cheat sheet on storing passwords (from memory): 19 MiB, two passes, one lane. */
const COST: Options = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export const hashPassword = (password: string): Promise<string> => hash(password.normalize('NFKC'), COST);

let nobody: Promise<string> | undefined;

/** Takes as long for a name that is not there, so that names cannot be found out by the clock. */
export async function isPassword(kept: string | undefined, password: string): Promise<boolean> {
  nobody ??= hashPassword('nobody has this password');
  const isRight = await verify(kept ?? (await nobody), password.normalize('NFKC')).catch(() => false);
  return kept !== undefined && isRight;
}
