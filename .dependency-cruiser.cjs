/** The rooms and who may speak to whom. Arrows point from a room to those it may import. */
const PURE = ['units', 'physics', 'system', 'simulation', 'recording', 'diagnosis', 'checks', 'readiness'];
const BELOW_SERVER = [...PURE, 'report', 'jobs', 'capture'];
const MAY_IMPORT = {
  units: [],
  physics: ['units'],
  system: ['units', 'physics'],
  // A simulation hands out a recording, so that all that reads recordings reads it too.
  simulation: ['units', 'physics', 'system', 'recording'],
  recording: ['units', 'physics'],
  diagnosis: ['units', 'physics', 'system', 'simulation', 'recording'],
  report: ['units', 'physics', 'system', 'simulation', 'recording', 'diagnosis', 'checks', 'readiness'],
  checks: ['units', 'physics', 'system', 'simulation', 'recording', 'diagnosis'],
  readiness: ['units', 'physics', 'system', 'simulation', 'recording'],
  jobs: [...PURE, 'report'],
  capture: ['units', 'physics', 'system', 'simulation', 'recording'],
  server: BELOW_SERVER,
  // The pages talk to the server over HTTP; of its code they share the shapes of requests and records only.
  web: [...PURE, 'report'],
  cli: [...BELOW_SERVER, 'server'],
};
const SHARED_WITH_PAGES = ['jobs/record', 'server/contract'];

const arrows = Object.entries(MAY_IMPORT).map(([room, others]) => ({
  name: `room-${room}`,
  comment: `src/${room} may import ${others.length > 0 ? others.join(', ') : 'no other room'}.`,
  severity: 'error',
  from: { path: `^src/${room}/` },
  to: {
    path: '^src/',
    pathNot: `^src/(${[room, ...others, ...(room === 'web' ? SHARED_WITH_PAGES : [])].join('|')})/`,
  },
}));

module.exports = {
  forbidden: [
    ...arrows,
    {
      name: 'unknown-room',
      comment: 'A new folder under src/ is a new room: name it in MAY_IMPORT with its arrows.',
      severity: 'error',
      from: { path: '^src/', pathNot: `^src/(${Object.keys(MAY_IMPORT).join('|')})/` },
      to: {},
    },
    {
      name: 'pure-rooms-have-no-node',
      comment: 'Pure rooms run the same in a browser worker and in Node.',
      severity: 'error',
      from: { path: `^src/(${PURE.join('|')})/`, pathNot: '[.]test[.]ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'pages-and-what-they-share-have-no-node',
      comment: 'It runs in a browser.',
      severity: 'error',
      from: { path: '^src/(web|jobs/record|server/contract)/', pathNot: '[.]test[.]tsx?$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'report-has-no-file-system',
      comment: 'The report is made of data and handed back; the command line reads and writes files.',
      severity: 'error',
      from: { path: '^src/report/', pathNot: '[.]test[.]ts$' },
      to: { dependencyTypes: ['core'], path: '^(node:)?(fs|child_process|net|http|https)' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-tests-in-sources',
      severity: 'error',
      from: { path: '^src/', pathNot: '[.]test[.]ts$' },
      to: { path: '[.]test[.]ts$|^test/' },
    },
    // Packages are resolved by the type-check; here only our own files.
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true, path: '^[.]' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
