using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.Extensions.Options;

namespace Studio.Shell;

/// <summary>
/// Closes the open pages before the studio stops. A page whose browser is away is kept for minutes, so that it can come back; at a stop
/// nobody comes back, and a page that was at work would ask a studio that is gone for its parts.
/// </summary>
/// <remarks>
/// One for the whole studio. Stopping waits until every page that a browser shows is closed, but not longer than <see cref="Patience"/>. What
/// was kept for a browser that is away can't be closed from here; once the rest is gone, nobody hears how it ends.
/// </remarks>
internal sealed class OpenPages(IHostApplicationLifetime life, IOptions<CircuitOptions> options, OpenPages.Silence silence) : IHostedService
{
    /// <summary>How long stopping waits for the pages at most.</summary>
    internal static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly Lock gate = new();
    private readonly TaskCompletionSource none = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private bool stopping;

    /// <summary>Pages that a browser shows, and at a stop those that are not yet let go.</summary>
    internal int Open { get; private set; }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        // before the connections are cut: a page that is cut off after this is not kept
        life.ApplicationStopping.Register(() =>
        {
            lock (gate)
            {
                stopping = true;
            }

            options.Value.DisconnectedCircuitRetentionPeriod = TimeSpan.Zero;
        });
        return Task.CompletedTask;
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        bool shown;
        lock (gate)
        {
            shown = Open > 0;
        }

        if (shown)
        {
            await Task.WhenAny(none.Task, Task.Delay(Patience, cancellationToken));
        }

        silence.Fallen = true;
    }

    private void Enter()
    {
        lock (gate)
        {
            Open++;
        }
    }

    // true unless the studio is stopping: then only the last of its parts let go ends a page
    private bool MayLeave(bool last)
    {
        lock (gate)
        {
            if (stopping && !last)
            {
                return false;
            }

            if (--Open == 0 && stopping)
            {
                none.TrySetResult();
            }

            return true;
        }
    }

    /// <summary>One page: it counts while a browser shows it, and at a stop until the last of its parts is let go.</summary>
    internal sealed class Page(OpenPages pages) : CircuitHandler, IDisposable
    {
        private bool counted;

        public override Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            if (!counted)
            {
                counted = true;
                pages.Enter();
            }

            return Task.CompletedTask;
        }

        public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
        {
            Leave(last: false);
            return Task.CompletedTask;
        }

        public void Dispose() => Leave(last: true);

        private void Leave(bool last)
        {
            if (counted && pages.MayLeave(last))
            {
                counted = false;
            }
        }
    }

    /// <summary>Falls when no page is shown any more.</summary>
    internal sealed class Silence
    {
        /// <summary>What the framework logs of its pages under.</summary>
        internal const string Category = "Microsoft.AspNetCore.Components.Server.Circuits";

        internal bool Fallen { get; set; }
    }
}
