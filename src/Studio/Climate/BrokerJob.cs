using System.Text;
using Microsoft.EntityFrameworkCore;
using MQTTnet;
using Studio.Data;
using Studio.Settings;

namespace Studio.Climate;

/// <summary>How listening at the broker goes, for the page.</summary>
public sealed class BrokerState : Shell.ILasting
{
    /// <summary>A whole sentence.</summary>
    public string Words { get; internal set; } = "No broker is set: the studio listens nowhere.";

    public bool Connected { get; internal set; }
}

/// <summary>
/// Listens at the maker's MQTT broker for as long as the studio runs. A broker that is down, refuses, or talks nonsense never stops the studio:
/// it is tried again, ever more slowly, and the page says why not.
/// </summary>
internal sealed class BrokerJob(IServiceScopeFactory scopes, News news, BrokerState state, ILogger<BrokerJob> log) : BackgroundService
{
    private static readonly TimeSpan Shortest = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    private CancellationTokenSource again = new();

    public override void Dispose()
    {
        again.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // the settings may not have a table yet while the studio starts
        using var ear = news.Listen(n =>
        {
            if (n.Topic is News.Settings)
            {
                _ = again.CancelAsync();
            }
        });
        var pause = Shortest;
        while (!stoppingToken.IsCancellationRequested)
        {
            using var changed = new CancellationTokenSource();
            Interlocked.Exchange(ref again, changed);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(stoppingToken, changed.Token);
            try
            {
                await ListenAsync(either.Token);
                pause = Shortest;
            }
            catch (OperationCanceledException) when (either.IsCancellationRequested)
            {
                pause = Shortest;
                continue;
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // the edge: whatever a broker does is said on the page and tried again
                (state.Connected, state.Words) = (false, $"The broker does not answer: {e.GetBaseException().Message} The studio tries again by itself.");
                log.LogDebug(e, "MQTT");
                news.Tell(News.Room);
            }

            await WaitAsync(pause, either.Token);
            pause = pause * 2 < Longest ? pause * 2 : Longest;
        }
    }

    private static async Task WaitAsync(TimeSpan pause, CancellationToken stop)
    {
        try
        {
            await Task.Delay(pause, stop);
        }
        catch (OperationCanceledException)
        {
            // settings changed, or the studio stops: the loop looks
        }
    }

    private async Task ListenAsync(CancellationToken stop)
    {
        await using var scope = scopes.CreateAsyncScope();
        var broker = (await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync()).Broker;
        if (broker is null)
        {
            (state.Connected, state.Words) = (false, "No broker is set: the studio listens nowhere.");
            await Task.Delay(Timeout.Infinite, stop);
            return;
        }

        if (scope.ServiceProvider.GetRequiredService<BrokerBook>().Password(broker) is not { } password)
        {
            (state.Connected, state.Words) = (false, "The broker's password was sealed with keys that are not in this data folder any more. Type it again.");
            await Task.Delay(Timeout.Infinite, stop);
            return;
        }

        using var client = new MqttClientFactory().CreateMqttClient();
        var lost = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        client.DisconnectedAsync += _ =>
        {
            lost.TrySetResult();
            return Task.CompletedTask;
        };
        client.ApplicationMessageReceivedAsync += m => HearAsync(m.ApplicationMessage.Topic, Encoding.UTF8.GetString(m.ApplicationMessage.Payload));
        var options = new MqttClientOptionsBuilder().WithTcpServer(broker.Host, broker.Port).WithTimeout(TimeSpan.FromSeconds(10)).WithTlsOptions(t => t.UseTls(broker.Tls));
        await client.ConnectAsync((broker.User.Length > 0 ? options.WithCredentials(broker.User, password) : options).Build(), stop);
        var topics = await TopicsAsync(scope.ServiceProvider, stop);
        foreach (var topic in topics)
        {
            await client.SubscribeAsync(topic, cancellationToken: stop);
        }

        (state.Connected, state.Words) = (true, $"Listening at {broker.Host} to {topics.Count} {(topics.Count == 1 ? "topic" : "topics")}.");
        news.Tell(News.Room);
        using var sensors = news.Listen(n => Resubscribe(n, topics, lost));
        await lost.Task.WaitAsync(stop);
        if (state.Connected)
        {
            (state.Connected, state.Words) = (false, $"The connection to {broker.Host} was lost. The studio tries again by itself.");
        }
    }

    // a sensor was made, changed or removed: come back with the new topics
    private void Resubscribe(NewsOf told, IReadOnlyList<string> topics, TaskCompletionSource lost)
    {
        if (told.Topic is News.Room && told.Id is null)
        {
            _ = Task.Run(async () =>
            {
                await using var scope = scopes.CreateAsyncScope();
                if (!(await TopicsAsync(scope.ServiceProvider, CancellationToken.None)).SequenceEqual(topics, StringComparer.Ordinal))
                {
                    lost.TrySetResult();
                }
            });
        }
    }

    private static async Task<List<string>> TopicsAsync(IServiceProvider services, CancellationToken stop)
    {
        await using var db = await services.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync(stop);
        return await db.Set<Sensor>().Where(s => s.Way == "mqtt" && s.RemovedAt == null && s.Topic != "").Select(s => s.Topic).Distinct().OrderBy(t => t).ToListAsync(stop);
    }

    private async Task HearAsync(string topic, string payload)
    {
        await using var scope = scopes.CreateAsyncScope();
        var intake = scope.ServiceProvider.GetRequiredService<IntakeBook>();
        await using var db = await scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync();
        foreach (var sensor in await db.Set<Sensor>().AsNoTracking().Where(s => s.Way == "mqtt" && s.RemovedAt == null && s.Topic == topic).ToListAsync())
        {
            var (message, words) = BrokerMessage.Read(sensor, payload);
            if (message is null)
            {
                await intake.RefuseAsync(sensor, words);
            }
            else
            {
                await intake.TakeAsync(sensor, [message]);
            }
        }
    }
}
