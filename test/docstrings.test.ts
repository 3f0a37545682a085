/**
 * Every exported function of the units, physics, system and simulation rooms says what it does and what its
 * arguments are. The form, in the comment right above the function:
 *
 *     /**
 *      * Mass flow of an ideal gas through a hole.            <- a description: required everywhere
 *      *
 *      * Valid: thin hole, ideal gas, 1 < gamma <= 5/3.       <- range of validity: required in physics
 *      * Source: isentropic flow, textbook.                   <- where it comes from: required in physics
 *      * @param upstreamAbsPa absolute pressure upstream [Pa] <- each parameter by its name with what it means:
 *      * @returns mass flow [kg/s]                               required everywhere; in physics with its unit in
 *      *\/                                                        square brackets, [-] when it has none
 *
 * A public method of an exported class needs a description only; what its arguments are, its class and types say.
 * A destructured parameter is documented by a tag of any name. `Valid:` and `Source:` start their line and may run
 * over several. The failure names the function and what it lacks.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const ROOMS = ['units', 'physics', 'system', 'simulation'] as const;

interface Found {
  readonly name: string;
  readonly line: number;
  readonly documented: ts.Node;
  readonly parameters: readonly ts.ParameterDeclaration[];
  readonly isMethod: boolean;
}

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword);

const isHidden = (node: ts.MethodDeclaration): boolean =>
  (ts.getModifiers(node) ?? []).some((m) => m.kind === ts.SyntaxKind.PrivateKeyword) ||
  ts.isPrivateIdentifier(node.name);

/** Exported functions, exported constants that hold a function, and public methods of exported classes. */
function exportedFunctions(source: ts.SourceFile): Found[] {
  const found: Found[] = [];
  const add = (
    name: string,
    documented: ts.Node,
    parameters: readonly ts.ParameterDeclaration[],
    isMethod = false,
  ): void => {
    const line = source.getLineAndCharacterOfPosition(documented.getStart(source)).line + 1;
    found.push({ name, line, documented, parameters, isMethod });
  };
  for (const statement of source.statements) {
    if (!isExported(statement)) continue;
    // Of overloads, the signatures are what a reader sees; the body below them repeats no comment.
    if (ts.isFunctionDeclaration(statement) && statement.name) {
      const name = statement.name.text;
      const overloaded = found.some((other) => other.name === name);
      if (!(overloaded && statement.body)) add(name, statement, statement.parameters);
    } else if (ts.isVariableStatement(statement)) {
      for (const { name, initializer } of statement.declarationList.declarations) {
        if (initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))) {
          add(name.getText(source), statement, initializer.parameters);
        }
      }
    } else if (ts.isClassDeclaration(statement)) {
      for (const member of statement.members) {
        if (ts.isMethodDeclaration(member) && !isHidden(member)) {
          add(`${statement.name?.text}.${member.name.getText(source)}`, member, member.parameters, true);
        }
      }
    }
  }
  return found;
}

/** What the comment of one function lacks, in words. */
function lacking({ documented, parameters, isMethod }: Found, strict: boolean): string[] {
  const doc = ts.getJSDocCommentsAndTags(documented).filter(ts.isJSDoc).at(-1);
  if (doc === undefined) return ['a comment /** ... */'];
  const text = ts.getTextOfJSDocComment(doc.comment) ?? '';
  const lacks: string[] = [];
  if (text.replace(/^(Valid|Source):[\s\S]*/m, '').trim() === '') lacks.push('a description');
  if (isMethod) return lacks;
  if (strict && !/^Valid:[ \t]*\S/m.test(text)) lacks.push('a line "Valid: ..."');
  if (strict && !/^Source:[ \t]*\S/m.test(text)) lacks.push('a line "Source: ..."');
  const tags = [...(doc.tags ?? [])].filter(ts.isJSDocParameterTag);
  parameters.forEach((parameter, i) => {
    const name = ts.isIdentifier(parameter.name) ? parameter.name.text : undefined;
    const tag = name === undefined ? tags[i] : tags.find((t) => t.name.getText() === name);
    const meaning = (tag && ts.getTextOfJSDocComment(tag.comment)) ?? '';
    const shown = name ?? `for parameter ${i + 1}`;
    if (meaning.replace(/\[[^\]]*\]/g, '').trim() === '') lacks.push(`@param ${shown} with its meaning`);
    if (strict && !/\[[^\]]+\]/.test(meaning)) lacks.push(`a unit in [..] at @param ${shown}`);
  });
  return lacks;
}

function problems(fileName: string, text: string, strict: boolean): string[] {
  const source = ts.createSourceFile(fileName, text, ts.ScriptTarget.ES2022, true);
  return exportedFunctions(source)
    .map((found) => ({ found, lacks: lacking(found, strict) }))
    .filter(({ lacks }) => lacks.length > 0)
    .map(({ found, lacks }) => `${fileName}:${found.line} ${found.name} lacks ${lacks.join('; ')}`);
}

const filesOf = (room: string): string[] =>
  readdirSync(join(ROOT, 'src', room), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts') && !name.endsWith('.d.ts'))
    .map((name) => `src/${room}/${name}`)
    .sort();

for (const room of ROOMS) {
  describe(`docstrings of ${room}`, () => {
    it('the room has files', () => expect(filesOf(room).length).toBeGreaterThan(0));
    for (const file of filesOf(room)) {
      it(file, () => {
        expect(problems(file, readFileSync(join(ROOT, file), 'utf8'), room === 'physics').join('\n')).toBe('');
      });
    }
  });
}

describe('the check itself', () => {
  const GOOD = `/**
 * Flow.
 *
 * Valid: always.
 * Source: textbook.
 * @param dropPa pressure drop [Pa]
 */
export function flow(dropPa: number): number { return dropPa; }`;

  it('passes a function in the form above', () => expect(problems('a.ts', GOOD, true)).toEqual([]));

  it('finds nothing missing in the strict form only when asked for less', () => {
    const short = '/** Flow.\n * @param dropPa pressure drop\n */\nexport const flow = (dropPa: number) => dropPa;';
    expect(problems('a.ts', short, false)).toEqual([]);
    expect(problems('a.ts', short, true)).toEqual([
      'a.ts:4 flow lacks a line "Valid: ..."; a line "Source: ..."; a unit in [..] at @param dropPa',
    ]);
  });

  for (const [what, change] of [
    ['a description', [' * Flow.\n', '']],
    ['a line "Valid: ..."', [' * Valid: always.\n', '']],
    ['a line "Source: ..."', ['Source: textbook.', 'Source:']],
    ['@param dropPa with its meaning', ['dropPa pressure drop', 'drop pressure drop']],
    ['a unit in [..] at @param dropPa', [' [Pa]', '']],
  ] as const) {
    it(`names ${what} when it is missing`, () => {
      const [message, ...more] = problems('a.ts', GOOD.replace(change[0], change[1]), true);
      expect(message).toContain(`flow lacks`);
      expect(message).toContain(what);
      expect(more).toEqual([]);
    });
  }

  it('sees bare functions, methods of exported classes, and leaves private ones alone', () => {
    const text = `export function bare() {}
export class Box { open(lid: number) {} private shut() {} #lock() {} }
function inner() {}`;
    expect(problems('a.ts', text, false).map((line) => line.split(' ')[1])).toEqual(['bare', 'Box.open']);
  });
});
