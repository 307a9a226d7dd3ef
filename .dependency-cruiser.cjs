// Imports point one way: app -> lib/server -> lib/schemas -> lib/domain.
const forbid = (name, from, to, comment) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { path: to },
});

module.exports = {
  forbidden: [
    forbid(
      'domain-is-alone',
      '^lib/domain',
      '^(app|lib/(server|schemas|cli)|generated|seed-demo|prisma)',
      'lib/domain imports nothing of ours but itself',
    ),
    forbid(
      'domain-is-pure',
      '^lib/domain',
      'node_modules/(next|react|react-dom|@prisma|better-sqlite3|zod|better-auth|pino|recharts)(/|$)',
      'lib/domain is pure TypeScript',
    ),
    {
      name: 'domain-has-no-node',
      severity: 'error',
      comment: 'lib/domain reads no clock, file or environment',
      from: { path: '^lib/domain' },
      to: { dependencyTypes: ['core'] },
    },
    forbid(
      'schemas-below-server',
      '^lib/schemas',
      '^(app|lib/(server|cli)|generated)',
      'lib/schemas imports only lib/domain',
    ),
    forbid('server-below-app', '^lib/server', '^(app|lib/cli)', 'lib/server imports lib/schemas and lib/domain'),
    forbid(
      'only-server-opens-the-database',
      '^(app|lib/(schemas|domain))',
      'node_modules/(@prisma|better-sqlite3)(/|$)|^generated',
      'database access goes through lib/server',
    ),
    { name: 'no-cycles', severity: 'error', comment: 'no circular imports', from: {}, to: { circular: true } },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^generated' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
