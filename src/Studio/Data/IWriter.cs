using Microsoft.EntityFrameworkCore;

namespace Studio.Data;

/// <summary>Who is at work: <see cref="StudioDb"/> asks it before anything is written, so that no act gets past it.</summary>
public interface IWriter
{
    /// <summary>The name that stands beside what is written.</summary>
    /// <exception cref="SignedOutException">Nobody is signed in here, or no longer.</exception>
    Task<string> NameAsync();
}

/// <summary>Work that no signed-in person began, under a name of its own: the clock, a seed, a sensor.</summary>
/// <param name="name">As it stands in the history, such as <c>the clock</c>.</param>
public sealed class OwnName(string name) : IWriter
{
    public Task<string> NameAsync() => Task.FromResult(name);
}

/// <summary>Something was to be written and nobody is signed in who may.</summary>
public sealed class SignedOutException() : Exception(Sentence)
{
    public const string Sentence = "You are signed out here, so nothing was kept. Sign in again, then do it once more.";
}

/// <summary>Asking before something is kept that no save follows at once: a file that arrives.</summary>
public static class Asking
{
    /// <summary>Passes where somebody may write.</summary>
    /// <exception cref="SignedOutException">Nobody is signed in here, or no longer.</exception>
    public static async Task AskAsync(this IDbContextFactory<StudioDb> factory)
    {
        await using var db = await factory.CreateDbContextAsync();
        await db.AskAsync();
    }
}
