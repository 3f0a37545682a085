import { Component, type ErrorInfo, lazy, type ReactNode, Suspense, useEffect } from 'react';
import { Announcer } from './kit/announce.tsx';
import { Button } from './kit/button.tsx';
import { Message } from './kit/message.tsx';
import { Link } from './router/link.tsx';
import { useRoute } from './router/router.ts';
import type { Route } from './router/routes.ts';
import { useText } from './text/language.ts';

const JobsPage = lazy(async () => ({ default: (await import('./jobs-page/jobs-page.tsx')).JobsPage }));
const JobPage = lazy(async () => ({ default: (await import('./sheet/job-page.tsx')).JobPage }));
const HandOverPage = lazy(async () => ({
  default: (await import('./hand-over-page/hand-over-page.tsx')).HandOverPage,
}));
const LivePage = lazy(async () => ({ default: (await import('./live/live-page.tsx')).LivePage }));
const SystemPage = lazy(async () => ({ default: (await import('./system-page/system-page.tsx')).SystemPage }));
const SettingsPage = lazy(async () => ({ default: (await import('./settings-page/settings-page.tsx')).SettingsPage }));
const SignInPage = lazy(async () => ({ default: (await import('./sign-in-page/sign-in-page.tsx')).SignInPage }));
const SharedPage = lazy(async () => ({ default: (await import('./shared-page/shared-page.tsx')).SharedPage }));

function page(route: Route): ReactNode {
  switch (route.page) {
    case 'jobs':
      return <JobsPage />;
    case 'job':
      return <JobPage key={route.id} id={route.id} />;
    case 'hand-over':
      return <HandOverPage key={route.id} id={route.id} />;
    case 'live':
      return <LivePage key={route.id} id={route.id} />;
    case 'system':
      return <SystemPage jobId={route.jobId} />;
    case 'settings':
      return <SettingsPage />;
    case 'sign-in':
      return <SignInPage token={route.token} next={route.next} />;
    case 'shared':
      return <SharedPage key={route.token} token={route.token} />;
    case 'unknown':
      return <UnknownPage />;
  }
}

export function App(): ReactNode {
  const route = useRoute();
  const text = useText();
  return (
    <>
      <PageErrors text={{ title: text.app.pageFailed, words: text.app.pageFailedWords, reload: text.app.reload }}>
        <Suspense fallback={<p className="waiting">{text.common.loading}</p>}>{page(route)}</Suspense>
      </PageErrors>
      <Announcer />
    </>
  );
}

function UnknownPage(): ReactNode {
  const text = useText();
  useEffect(() => {
    document.title = `${text.app.unknownPage} · ${text.app.name}`;
  }, [text]);
  return (
    <main className="paper">
      <div className="sheet stack">
        <h1>{text.app.unknownPage}</h1>
        <p>{text.app.unknownPageWords}</p>
        <p>
          <Link className="button" href="/">
            {text.app.toJobs}
          </Link>
        </p>
      </div>
    </main>
  );
}

interface BoundaryProps {
  readonly children: ReactNode;
  readonly text: { readonly title: string; readonly words: string; readonly reload: string };
}

/** A fault in one page says so instead of leaving an empty window. */
class PageErrors extends Component<BoundaryProps, { error: Error | null }> {
  override state: { error: Error | null } = { error: null };
  static getDerivedStateFromError(error: Error): { error: Error } {
    return { error };
  }
  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }
  override render(): ReactNode {
    const { error } = this.state;
    if (error === null) return this.props.children;
    const { title, words, reload } = this.props.text;
    return (
      <main className="paper">
        <div className="sheet stack">
          <h1>{title}</h1>
          <Message isBad isLoud>
            <p>{words}</p>
            <p className="small">{error.message}</p>
          </Message>
          <p>
            <Button onClick={() => location.reload()}>{reload}</Button>
          </p>
        </div>
      </main>
    );
  }
}
