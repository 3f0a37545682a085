/** Hands a text to the browser's downloads. */
export function saveText(fileName: string, text: string, type = 'text/csv'): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  URL.revokeObjectURL(address);
}
