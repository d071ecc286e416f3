using Microsoft.AspNetCore.Components.Web;
using Studio.Data;

namespace Studio.Shell;

/// <summary>
/// What the log hears of a page that stumbled. Somebody who is no longer signed in is refused as intended, and the log is told so in one
/// line; anything else is a fault and comes with its trace.
/// </summary>
internal sealed partial class StumbleLog(ILogger<StumbleLog> log) : IErrorBoundaryLogger
{
    public ValueTask LogErrorAsync(Exception exception)
    {
        if (exception is SignedOutException)
        {
            Refused();
        }
        else
        {
            Stumbled(exception);
        }

        return ValueTask.CompletedTask;
    }

    [LoggerMessage(LogLevel.Information, "An act was refused: nobody is signed in at that page any more.")]
    private partial void Refused();

    [LoggerMessage(LogLevel.Error, "A page stumbled.")]
    private partial void Stumbled(Exception exception);
}
