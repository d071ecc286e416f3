using System.Threading.RateLimiting;
using Studio.Engine;
using Studio.Shell;

namespace Studio.Climate;

/// <summary>Where sensors bring their readings: <c>POST /api/readings</c> with a token of their own.</summary>
internal sealed class ReadingPaths : IPaths, IDisposable
{
    private const long LargestBytes = 1024 * 1024;

    // a sensor that sends every second is welcome, one that floods is not
    private readonly PartitionedRateLimiter<string> pace = PartitionedRateLimiter.Create<string, string>(token => RateLimitPartition.GetTokenBucketLimiter(token, _ => new()
    {
        TokenLimit = 240,
        TokensPerPeriod = 120,
        ReplenishmentPeriod = TimeSpan.FromMinutes(1),
        QueueLimit = 0,
    }));

    private sealed record Refusal(IReadOnlyList<InputError> Errors, int Kept = 0, int Folded = 0, IReadOnlyList<IntakeDoubt>? Doubts = null);

    public void Map(IEndpointRouteBuilder app) => app.MapPost("/api/readings", ReceiveAsync).AllowAnonymous().DisableAntiforgery();

    public void Dispose() => pace.Dispose();

    private async Task<IResult> ReceiveAsync(HttpContext http, IntakeBook book)
    {
        var header = http.Request.Headers.Authorization.ToString();
        if (!header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) || header[7..].Trim() is not { Length: > 0 and < 200 } token)
        {
            http.Response.Headers.WWWAuthenticate = "Bearer";
            return Refuse(401, "Send the sensor's token: Authorization: Bearer followed by the token. It is made on the studio's page of the room.");
        }

        var hash = SensorToken.Hash(token);
        using var lease = pace.AttemptAcquire(hash);
        if (!lease.IsAcquired)
        {
            http.Response.Headers.RetryAfter = "60";
            return Refuse(429, "That is more than two calls a second. Send a list of readings in one call, or send less often.");
        }

        var sensor = await book.SensorAsync(token);
        if (sensor is not { RemovedAt: null })
        {
            http.Response.Headers.WWWAuthenticate = "Bearer";
            return sensor is null ? Refuse(401, "No sensor has this token.") : Refuse(410, $"The sensor {sensor.Name} was removed from the studio. Nothing was kept; make it again for a new token.");
        }

        if (http.Request.ContentLength > LargestBytes)
        {
            return Refuse(413, "More than 1 MB in one call. Send the readings in several.");
        }

        return await TakeAsync(http, book, sensor);
    }

    private static async Task<IResult> TakeAsync(HttpContext http, IntakeBook book, Sensor sensor)
    {
        if (await BodyAsync(http) is not { } body)
        {
            return Refuse(413, "More than 1 MB in one call. Send the readings in several.");
        }

        var (messages, errors) = SensorMessages.Read(body);
        var answer = messages.Count > 0 ? await book.TakeAsync(sensor, messages) : new(0, 0, []);
        if (errors.Count == 0)
        {
            return Results.Json(answer);
        }

        await book.RefuseAsync(sensor, errors[0].Message);
        return Results.Json(new Refusal(errors, answer.Kept, answer.Folded, answer.Doubts), statusCode: 400);
    }

    // a body without a length is read no further than it may be long
    private static async Task<string?> BodyAsync(HttpContext http)
    {
        using var reader = new StreamReader(http.Request.Body);
        var letters = new char[8192];
        var text = new System.Text.StringBuilder();
        while (await reader.ReadAsync(letters, http.RequestAborted) is > 0 and var got)
        {
            if (text.Append(letters, 0, got).Length > LargestBytes)
            {
                return null;
            }
        }

        return text.ToString();
    }

    private static IResult Refuse(int status, string words) => Results.Json(new Refusal([new("", words)]), statusCode: status);
}
