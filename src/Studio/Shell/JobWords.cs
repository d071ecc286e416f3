using Hangfire.AspNetCore;
using Hangfire.Logging;

namespace Studio.Shell;

/// <summary>
/// Where the jobs' words go: into the studio's own log. Hangfire has one such place to a process and keeps it when the studio that gave it has
/// ended; whoever starts beside or after that one finds silence there, and not a log that was disposed of.
/// </summary>
internal sealed class JobWords(ILoggerFactory loggers) : ILogProvider
{
    private readonly AspNetCoreLogProvider words = new(loggers);

    public ILog GetLogger(string name)
    {
        try
        {
            return words.GetLogger(name);
        }
        catch (ObjectDisposedException)
        {
            return new Silence();
        }
    }

    private sealed class Silence : ILog
    {
        public bool Log(Hangfire.Logging.LogLevel logLevel, Func<string> messageFunc, Exception? exception = null) => false;
    }
}
