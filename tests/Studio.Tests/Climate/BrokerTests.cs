using System.Net;
using System.Net.Sockets;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MQTTnet;
using MQTTnet.Server;
using Studio.Climate;
using Studio.Settings;
using Studio.Tests.SignIn;

namespace Studio.Tests.Climate;

/// <summary>The studio listens at a real broker, which runs in this process.</summary>
public sealed class BrokerTests(StudioHosted studio) : IClassFixture<StudioHosted>
{
    [Fact]
    public async Task What_a_sensor_publishes_is_taken_in_and_a_broker_that_goes_away_is_told()
    {
        var port = FreePort();
        using var server = new MqttServerFactory().CreateMqttServer(new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointPort(port).WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(IPAddress.None).Build());
        await server.StartAsync();
        using var scope = studio.Scope("Wren");
        var services = scope.ServiceProvider;
        (await services.GetRequiredService<SensorBook>().SaveAsync(new() { Name = "Gateway", Way = "mqtt", Topic = "shed/climate", CelsiusField = "air.t", HumidityField = "air.h", Unit = "F" }, "Wren")).Saved.Ok.ShouldBeTrue();
        (await services.GetRequiredService<BrokerBook>().SaveAsync(new() { Host = "127.0.0.1", Port = port, User = "bench", Password = "not in the open" }, "Wren")).Ok.ShouldBeTrue();
        var state = studio.Services.GetRequiredService<BrokerState>();
        await UntilAsync(() => Task.FromResult(state.Connected), () => state.Words);
        (await services.GetRequiredService<SettingsBook>().ReadAsync()).Broker!.SealedPassword.ShouldNotContain("open");

        await PublishAsync(server, "{\"air\":{\"t\":68,\"h\":51}}");
        await UntilAsync(async () => (await ReadingsAsync()).Count == 1, () => state.Words);
        var reading = (await ReadingsAsync())[0];
        reading.Celsius.ShouldBe(20, 1e-9);
        reading.HumidityPercent.ShouldBe(51);
        reading.By.ShouldBe("Gateway");

        await PublishAsync(server, "{\"air\":{}}");
        await UntilAsync(async () => (await services.GetRequiredService<SensorBook>().ListAsync())[0].Sensor.LastRefusal.Contains("air.t", StringComparison.Ordinal), () => state.Words);

        await server.StopAsync();
        await UntilAsync(() => Task.FromResult(!state.Connected), () => state.Words);
    }

    [Theory]
    [InlineData("21.5", "", 21.5)]
    [InlineData(" 21.5 ", "", 21.5)]
    [InlineData("{\"t\":\"21.5\"}", "t", 21.5)]
    public void A_message_is_a_number_or_a_field(string payload, string field, double celsius) =>
        BrokerMessage.Read(new Sensor { CelsiusField = field }, payload).Message!.Celsius.ShouldBe(celsius);

    [Theory]
    [InlineData("", "")]
    [InlineData("warm", "")]
    [InlineData("21,5", "")]
    [InlineData("NaN", "")]
    [InlineData("21.5", "t")]
    [InlineData("[1]", "t")]
    [InlineData("{\"t\":null}", "t")]
    [InlineData("{\"t\":{\"u\":1}}", "t.u.v")]
    public void What_is_neither_says_why(string payload, string field)
    {
        var (message, words) = BrokerMessage.Read(new Sensor { CelsiusField = field }, payload);
        message.ShouldBeNull();
        words.ShouldNotBeEmpty();
    }

    private static async Task PublishAsync(MqttServer server, string payload) =>
        await server.InjectApplicationMessage(new InjectedMqttApplicationMessage(new MqttApplicationMessageBuilder().WithTopic("shed/climate").WithPayload(payload).Build()) { SenderClientId = "sensor" });

    private static int FreePort()
    {
        using var socket = new TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return ((IPEndPoint)socket.LocalEndpoint).Port;
    }

    private static async Task UntilAsync(Func<Task<bool>> there, Func<string> words)
    {
        for (var i = 0; i < 200; i++)
        {
            if (await there())
            {
                return;
            }

            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException("Waited twenty seconds; the studio said: " + words());
    }

    private async Task<List<Reading>> ReadingsAsync()
    {
        await using var db = studio.Open();
        return await db.Set<Reading>().AsNoTracking().ToListAsync();
    }
}
