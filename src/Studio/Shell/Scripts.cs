using Microsoft.JSInterop;

namespace Studio.Shell;

/// <summary>Things of the browser's that a page holds on to.</summary>
public static class Scripts
{
    /// <summary>Ends a watcher of the page's and lets it and its module go; quietly where the browser has left or no longer answers.</summary>
    /// <param name="watcher">Told <paramref name="verb"/>, then let go; null: it never came to be.</param>
    /// <param name="verb">The function of <paramref name="watcher"/> that ends it.</param>
    /// <param name="module">Let go last.</param>
    public static async ValueTask LetGoAsync(IJSObjectReference? watcher, string verb, IJSObjectReference? module)
    {
        try
        {
            if (watcher is not null)
            {
                await watcher.InvokeVoidAsync(verb);
                await watcher.DisposeAsync();
            }

            if (module is not null)
            {
                await module.DisposeAsync();
            }
        }
        catch (Exception e) when (e is JSDisconnectedException or TaskCanceledException)
        {
            // the browser left first, and its watchers with it; a page that is away and not yet given up answers by a cancelled call
        }
    }
}
