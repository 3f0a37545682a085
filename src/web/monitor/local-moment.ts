/** Moments as a field of the kind "datetime-local" has them: wall-clock time of this device, to the minute. */
const two = (value: number): string => String(value).padStart(2, '0');

export function toField(iso: string | undefined): string {
  if (iso === undefined) return '';
  const at = new Date(iso);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** undefined: empty, or no date yet. */
export function fromField(value: string): string | undefined {
  const at = new Date(value);
  return value === '' || Number.isNaN(at.getTime()) ? undefined : at.toISOString();
}
