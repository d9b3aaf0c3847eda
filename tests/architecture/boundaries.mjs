// The one-way imports. Each rule says what to do instead.
const CORE = '^lib/(domain|stats|balance|planning|checks|views)/';

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'core-is-pure',
      severity: 'error',
      comment: 'The core takes values and gives values. Pass in what it needs; do I/O in a use case.',
      from: { path: CORE },
      to: { pathNot: [CORE, 'node_modules/(simple-statistics)/'] },
    },
    {
      name: 'domain-knows-nothing',
      severity: 'error',
      comment: 'lib/domain is the bottom: move what needs more up into stats, checks or views.',
      from: { path: '^lib/domain/' },
      to: { path: '^lib/', pathNot: '^lib/domain/' },
    },
    {
      name: 'stats-know-domain-only',
      severity: 'error',
      comment: 'A statistical function takes numbers. Shape the numbers in checks or views.',
      from: { path: '^lib/stats/' },
      to: { path: '^lib/', pathNot: '^lib/(stats|domain)/' },
    },
    {
      name: 'prisma-only-in-lib-db',
      severity: 'error',
      comment: 'Database access goes through a function in lib/db.',
      from: { path: '^(app|worker|lib)/', pathNot: '^lib/(db|launch|auth)/' },
      to: { path: ['node_modules/@?prisma/', '^lib/db/generated', 'node_modules/pg/'] },
    },
    {
      name: 'entry-points-go-through-usecases',
      severity: 'error',
      comment: 'Pages, routes and handlers call a use case (or lib/auth, lib/edge), never the database.',
      from: { path: '^(app|worker)/' },
      to: { path: '^lib/db/', pathNot: '^lib/db/client\\.ts$' },
    },
    {
      name: 'files-only-through-usecases',
      severity: 'error',
      comment: 'A use case asks who may see a file before it touches the store: call one.',
      from: { path: '^(app|worker|lib)/', pathNot: '^lib/(files|usecases)/' },
      to: { path: '^lib/files/' },
    },
    {
      name: 'pictures-only-in-lib-files',
      severity: 'error',
      comment: 'Pictures of strangers are decoded in one place, with its bounds: lib/files/still-picture.ts.',
      from: { path: '^(app|worker|lib)/', pathNot: '^lib/files/' },
      to: { path: 'node_modules/sharp/' },
    },
    {
      name: 'push-only-in-lib-push',
      severity: 'error',
      comment:
        'Addresses of push services come from phones: they are called in one place, with its look at each.',
      from: { path: '^(app|worker|lib)/', pathNot: '^lib/push/' },
      to: { path: 'node_modules/web-push/' },
    },
    {
      name: 'bullmq-only-at-the-edges',
      severity: 'error',
      comment: 'Enqueue through lib/jobs/queue.ts; work in worker/.',
      from: { path: '^(app|lib|worker)/', pathNot: '^(worker/|lib/jobs/)' },
      to: { path: 'node_modules/(bullmq|ioredis)/' },
    },
    {
      name: 'lib-knows-no-entry-point',
      severity: 'error',
      comment: 'lib serves app and worker; it cannot know them.',
      from: { path: '^lib/' },
      to: { path: '^(app|worker|tests|prisma)/' },
    },
    {
      name: 'app-knows-no-worker',
      severity: 'error',
      comment: 'Web and worker meet in the queue and the database.',
      from: { path: '^app/' },
      to: { path: '^worker/' },
    },
    {
      name: 'worker-knows-no-app',
      severity: 'error',
      comment: 'Web and worker meet in the queue and the database.',
      from: { path: '^worker/' },
      to: { path: '^app/' },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      comment: 'Product code cannot lean on tests.',
      from: { pathNot: '^tests/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-circular',
      severity: 'error',
      comment: 'Move what both need into a third file.',
      from: { pathNot: '^lib/db/generated' },
      to: { circular: true, pathNot: '^lib/db/generated' },
    },
    {
      name: 'resolves',
      severity: 'error',
      comment: 'The import does not resolve: correct its path.',
      from: { pathNot: '^lib/db/generated' },
      to: { couldNotResolve: true, pathNot: '\\.css$' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^lib/db/generated/(?!client)' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.css'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
