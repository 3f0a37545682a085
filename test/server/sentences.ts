/** Every sentence that the program's own errors say, read from its source: what is said of data stands as "7". */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
const ERRORS: ReadonlySet<string> = new Set(['Refusal', 'StoreProblem', 'CsvError', 'UnreadableFile']);
const FACTS: ReadonlySet<string> = new Set(['found', 'expected', 'advice', 'whatToDo']);

export interface Sentence {
  readonly text: string;
  readonly where: string;
}

/** What an expression can say; undefined where that is data alone. */
function sayings(node: ts.Expression): readonly string[] | undefined {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node)) return sayings(node.expression);
  if (ts.isConditionalExpression(node)) {
    const both = [sayings(node.whenTrue), sayings(node.whenFalse)].filter((part) => part !== undefined);
    return both.length === 0 ? undefined : both.flat();
  }
  if (ts.isBinaryExpression(node)) {
    const [left, right] = [sayings(node.left), sayings(node.right)];
    if (node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
      return (left ?? ['7']).flatMap((a) => (right ?? ['7']).map((b) => a + b));
    }
    return node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken ? right : undefined;
  }
  if (!ts.isTemplateExpression(node)) return undefined;
  return node.templateSpans.reduce<readonly string[]>(
    (said, { expression, literal }) =>
      said.flatMap((text) => (sayings(expression) ?? ['7']).map((part) => text + part + literal.text)),
    [node.head.text],
  );
}

function* factsIn(node: ts.Node): Iterable<ts.Expression> {
  if (ts.isPropertyAssignment(node) && FACTS.has(node.name.getText())) yield node.initializer;
  for (const child of node.getChildren()) yield* factsIn(child);
}

function* errorsIn(node: ts.Node): Iterable<ts.Expression> {
  const isError =
    (ts.isNewExpression(node) && ERRORS.has(node.expression.getText())) ||
    // Classes of errors, and the readers' own way to make one.
    (ts.isCallExpression(node) &&
      (node.expression.kind === ts.SyntaxKind.SuperKeyword || node.expression.getText() === 'fail'));
  if (isError) {
    const given = [...(node.arguments ?? [])];
    yield* given.filter((part) => !ts.isObjectLiteralExpression(part));
    for (const part of given) yield* factsIn(part);
  }
  for (const child of node.getChildren()) yield* errorsIn(child);
}

function* progressIn(node: ts.Node): Iterable<ts.Expression> {
  if (ts.isCallExpression(node) && /(^|\.)report$/.test(node.expression.getText()) && node.arguments.length === 2) {
    yield node.arguments[1]!;
  }
  for (const child of node.getChildren()) yield* progressIn(child);
}

/** What long work says of how far it is. */
export const progressOf = (folders: readonly string[]): readonly Sentence[] => collect(folders, progressIn, /./);

/** Sentences of the errors in some folders of `src`, those of tests left out. */
export const sentencesOf = (folders: readonly string[]): readonly Sentence[] =>
  // Codes and names of fields are no sentences.
  collect(folders, errorsIn, /[ .]/);

function collect(
  folders: readonly string[],
  find: (node: ts.Node) => Iterable<ts.Expression>,
  isSentence: RegExp,
): readonly Sentence[] {
  const files = folders.flatMap((folder) =>
    folder.endsWith('.ts')
      ? [folder]
      : readdirSync(join(SRC, folder), { recursive: true, encoding: 'utf8' })
          .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
          .map((name) => join(folder, name)),
  );
  const found = new Map<string, Sentence>();
  for (const file of files) {
    const source = ts.createSourceFile(file, readFileSync(join(SRC, file), 'utf8'), ts.ScriptTarget.Latest, true);
    for (const expression of find(source)) {
      for (const text of sayings(expression) ?? []) if (isSentence.test(text)) found.set(text, { text, where: file });
    }
  }
  return [...found.values()];
}
