using System.Globalization;
using System.Text.Json;
using FluentValidation;
using Microsoft.AspNetCore.DataProtection;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Climate;

/// <summary>The broker as it is being typed.</summary>
public sealed class BrokerForm
{
    public string Host { get; set; } = "";

    public double? Port { get; set; } = 1883;

    public bool Tls { get; set; }

    public string User { get; set; } = "";

    /// <summary>Empty keeps the one that is sealed already.</summary>
    public string Password { get; set; } = "";
}

/// <summary>What keeps a broker from being used; an empty name turns listening off.</summary>
public sealed class BrokerValidator : AbstractValidator<BrokerForm>
{
    public BrokerValidator()
    {
        RuleFor(b => b.Host).MaximumLength(200).WithMessage("Keep the name under 200 letters.")
            .Must(h => h.Trim().Length == 0 || Uri.CheckHostName(h.Trim()) is not UriHostNameType.Unknown).WithMessage("Type the broker's name or address alone, such as broker.local or 192.168.1.20.");
        RuleFor(b => b.Port).Must(p => p is >= 1 and <= 65535 && Math.Floor(p.Value).Equals(p.Value)).WithMessage("A port lies between 1 and 65535: 1883 as a rule, 8883 with TLS.");
    }
}

/// <summary>Reads and writes where the studio listens.</summary>
public sealed class BrokerBook(SettingsBook settings, IDataProtectionProvider protection, Who who)
{
    /// <summary>Why a move to another broker needs the password typed.</summary>
    public const string PasswordAgain = "Type the broker's password again: broker, port or TLS changed, and the sealed one is never sent to another place than it was typed for.";

    private IDataProtector Seal => protection.CreateProtector("studio broker password");

    /// <summary>The form, without the password.</summary>
    public async Task<BrokerForm> FormAsync() => (await settings.ReadAsync()).Broker is { } b ? new() { Host = b.Host, Port = b.Port, Tls = b.Tls, User = b.User } : new();

    /// <summary>Keeps it; an empty host stops listening. Only an owner may: it decides where a password is sent.</summary>
    /// <exception cref="SignedOutException">Nobody is signed in here who may.</exception>
    public async Task<Saved> SaveAsync(BrokerForm form, string by)
    {
        if (!await who.IsOwnerAsync())
        {
            return Saved.Refused("Where the studio listens is the owner's to set. Ask them.");
        }

        var all = await settings.ReadAsync();
        if (all.Broker is { SealedPassword.Length: > 0 } before && form.Password.Length == 0 && Moves(before, form))
        {
            return Saved.Refused(PasswordAgain);
        }

        all.Broker = form.Host.Trim().Length == 0 ? null : new(
            form.Host.Trim(), (int)(form.Port ?? 1883), form.Tls, form.User.Trim(), form.Password.Length > 0 ? Seal.Protect(form.Password) : all.Broker?.SealedPassword ?? "");
        return await settings.SaveAsync(all, by);
    }

    // no host is no move: nothing is sent any more, and the password is let go
    private static bool Moves(BrokerSettings before, BrokerForm form) =>
        form.Host.Trim() is { Length: > 0 } host && (host, (int)(form.Port ?? 1883), form.Tls) != (before.Host, before.Port, before.Tls);

    /// <summary>The password of a broker; null where it was sealed with keys that are not here any more.</summary>
    public string? Password(BrokerSettings broker)
    {
        try
        {
            return broker.SealedPassword.Length == 0 ? "" : Seal.Unprotect(broker.SealedPassword);
        }
        catch (System.Security.Cryptography.CryptographicException)
        {
            return null;
        }
    }
}

/// <summary>Reads what a sensor published: a number alone, or a field of a JSON object.</summary>
internal static class BrokerMessage
{
    /// <summary>The reading, or why there is none.</summary>
    internal static (SensorMessage? Message, string Words) Read(Sensor sensor, string payload)
    {
        double celsius;
        double? humidity = null;
        if (sensor.CelsiusField.Length == 0)
        {
            if (!double.TryParse(payload.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out celsius) || !double.IsFinite(celsius))
            {
                return (null, "The message is not a number alone. If it is an object, name the field of the temperature.");
            }
        }
        else
        {
            try
            {
                using var json = JsonDocument.Parse(payload);
                if (Field(json.RootElement, sensor.CelsiusField) is not { } found)
                {
                    return (null, $"The message has no number in the field '{sensor.CelsiusField}'.");
                }

                celsius = found;
                humidity = sensor.HumidityField.Length == 0 ? null : Field(json.RootElement, sensor.HumidityField);
            }
            catch (Exception e) when (e is JsonException or InvalidOperationException)
            {
                return (null, "The message is not JSON, and a field of it is asked for.");
            }
        }

        return (new(0, sensor.Unit == "F" ? SensorMessage.OfFahrenheit(celsius) : celsius, humidity is >= 0 and <= 100 ? humidity : null), "");
    }

    private static double? Field(JsonElement at, string path)
    {
        foreach (var name in path.Split('.'))
        {
            if (at.ValueKind is not JsonValueKind.Object || !at.TryGetProperty(name, out at))
            {
                return null;
            }
        }

        return at.ValueKind switch
        {
            JsonValueKind.Number when at.TryGetDouble(out var n) && double.IsFinite(n) => n,
            JsonValueKind.String when double.TryParse(at.GetString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var n) && double.IsFinite(n) => n,
            _ => null,
        };
    }
}
