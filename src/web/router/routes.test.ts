import { describe, expect, test } from 'vitest';
import { routeOf } from './routes.ts';

describe('addresses of the pages', () => {
  test.each([
    ['/', '', '', { page: 'jobs' }],
    ['/jobs/7', '', '', { page: 'job', id: '7' }],
    ['/jobs/7/', '', '', { page: 'job', id: '7' }],
    ['/jobs/7/hand-over', '', '', { page: 'hand-over', id: '7' }],
    ['/jobs/7/live', '', '', { page: 'live', id: '7' }],
    ['/system', '', '', { page: 'system', jobId: null }],
    ['/system', '?job=7', '', { page: 'system', jobId: '7' }],
    ['/settings', '', '', { page: 'settings' }],
    ['/shared/abc', '', '', { page: 'shared', token: 'abc' }],
    ['/sign-in', '?next=%2Fjobs%2F7', '', { page: 'sign-in', token: null, next: '/jobs/7' }],
    ['/sign-in', '', '#first=secret', { page: 'sign-in', token: 'secret', next: null }],
  ])('%s%s%s', (path, search, hash, route) => {
    expect(routeOf(path, search, hash)).toEqual(route);
  });

  test.each(['/jobs', '/jobs/7/other', '/nothing', '/shared', '/settings/more', '/jobs/%E0%A4%A'])(
    '%s leads nowhere',
    (path) => {
      expect(routeOf(path, '', '')).toEqual({ page: 'unknown' });
    },
  );
});
