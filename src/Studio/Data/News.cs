namespace Studio.Data;

/// <summary>Something changed: which kind of record, and which one.</summary>
/// <param name="Topic">One of the constants of <see cref="News"/>.</param>
/// <param name="Id">The record, where one is meant.</param>
public sealed record NewsOf(string Topic, int? Id);

/// <summary>
/// Tells every open page in this process what was just saved, so that the shelf redraws itself on every browser.
/// Listeners must be quick and must not throw: they queue a redraw and return.
/// </summary>
public sealed class News
{
    public const string Commission = "commission";
    public const string Keepsake = "keepsake";
    public const string Piece = "piece";
    public const string Pour = "pour";
    public const string Room = "room";
    public const string Quote = "quote";
    public const string Stores = "stores";
    public const string Settings = "settings";

    private event Action<NewsOf>? Heard;

    /// <summary>Listens until the returned token is disposed.</summary>
    public IDisposable Listen(Action<NewsOf> listener)
    {
        Heard += listener;
        return new Ear(() => Heard -= listener);
    }

    /// <summary>Tells everybody; call it after the save, never before.</summary>
    public void Tell(string topic, int? id = null) => Heard?.Invoke(new NewsOf(topic, id));

    private sealed class Ear(Action stop) : IDisposable
    {
        public void Dispose() => stop();
    }
}
