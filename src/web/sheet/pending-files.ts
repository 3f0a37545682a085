/** Files dropped on the list, on their way to the sheet of the job that was opened for them. */
const waiting = new Map<string, readonly File[]>();

export const leaveFiles = (jobId: string, files: readonly File[]): void => {
  waiting.set(jobId, files);
};

export function takeFiles(jobId: string): readonly File[] {
  const files = waiting.get(jobId) ?? [];
  waiting.delete(jobId);
  return files;
}
