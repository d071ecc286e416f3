using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Studio.Data;

namespace Studio.Settings;

/// <summary>The studio's own figures; one row.</summary>
public sealed class StudioSettings : IVersioned
{
    public int Id { get; set; } = 1;

    public string StudioName { get; set; } = "My studio";

    public string Address { get; set; } = "";

    public string Email { get; set; } = "";

    public string Phone { get; set; } = "";

    /// <summary>ISO 4217.</summary>
    public string Currency { get; set; } = "GBP";

    public string TaxName { get; set; } = "VAT";

    public decimal TaxPercent { get; set; }

    public decimal LabourRatePerHour { get; set; } = 18;

    public decimal OverheadMonthly { get; set; }

    public decimal BenchHoursPerMonth { get; set; } = 80;

    public decimal MarginPercent { get; set; } = 30;

    public decimal RemakePercent { get; set; } = 5;

    public decimal DepositPercent { get; set; } = 50;

    public decimal FeePercent { get; set; }

    public decimal FeeFixed { get; set; }

    public decimal RoundTo { get; set; } = 1;

    public decimal PackagingCost { get; set; }

    public decimal DeliveryCost { get; set; }

    public int QuoteValidDays { get; set; } = 30;

    public double WastePercent { get; set; } = 3;

    public double WastePerBatchG { get; set; } = 5;

    /// <summary>IANA name, such as <c>Europe/London</c>.</summary>
    public string TimeZone { get; set; } = "Europe/London";

    /// <summary>How lengths are shown: <c>metric</c> or <c>inch</c>.</summary>
    public string Units { get; set; } = "metric";

    /// <summary><c>A4</c> or <c>Letter</c>.</summary>
    public string Paper { get; set; } = "A4";

    /// <summary>Places where keepsakes are kept, offered while typing.</summary>
    public List<string> Places { get; set; } = ["Keepsake drawer 1", "Keepsake drawer 2", "Drying box", "Bench"];

    /// <summary>Working days of the week: keys of <see cref="WorkWeek"/>.</summary>
    public List<string> WorkDays { get; set; } = [.. WorkWeek.Usual];

    /// <summary>When hands begin on a working day, on the studio's clock.</summary>
    public TimeOnly WorkFrom { get; set; } = WorkWeek.UsualFrom;

    /// <summary>When they stop.</summary>
    public TimeOnly WorkUntil { get; set; } = WorkWeek.UsualUntil;

    /// <summary>Hands' time on one piece in a working day [min].</summary>
    public int WorkMinutesPerDay { get; set; } = WorkWeek.UsualMinutesPerDay;

    /// <summary>Days on which nobody works.</summary>
    public List<DateOnly> DaysOff { get; set; } = [];

    /// <summary>Days kept in hand between the earliest day and the promised one.</summary>
    public int ReserveDays { get; set; } = WorkWeek.UsualReserveDays;

    /// <summary>Days on the way to a family that does not collect.</summary>
    public int DeliveryDays { get; set; } = WorkWeek.UsualDeliveryDays;

    /// <summary>How warm the room usually is where pieces cure [°C]; null: as it was read of late, and not known where it was not.</summary>
    public double? UsualRoomC { get; set; }

    /// <summary>Address under which phones reach the studio, for QR labels; empty: the address the page was opened with.</summary>
    public string PublicUrl { get; set; } = "";

    /// <summary>The maker's MQTT broker; null where there is none.</summary>
    public BrokerSettings? Broker { get; set; }

    /// <summary>True in the demo studio, so that every page says so.</summary>
    public bool Demo { get; set; }

    public int Version { get; set; }

    private sealed class Table : IEntityTypeConfiguration<StudioSettings>
    {
        public void Configure(EntityTypeBuilder<StudioSettings> builder)
        {
            builder.Property(s => s.Id).ValueGeneratedNever();
            builder.Property(s => s.Places).AsJson();
            builder.Property(s => s.Broker).AsJson();

            // a studio made before these figures begins with them; what a form says is always written, a 0 too
            builder.Property(s => s.WorkDays).AsJson().HasDefaultValue(new List<string>(WorkWeek.Usual)).ValueGeneratedNever();
            builder.Property(s => s.WorkFrom).HasDefaultValue(WorkWeek.UsualFrom).ValueGeneratedNever();
            builder.Property(s => s.WorkUntil).HasDefaultValue(WorkWeek.UsualUntil).ValueGeneratedNever();
            builder.Property(s => s.WorkMinutesPerDay).HasDefaultValue(WorkWeek.UsualMinutesPerDay).ValueGeneratedNever();
            builder.Property(s => s.DaysOff).AsJson().HasDefaultValue(new List<DateOnly>()).ValueGeneratedNever();
            builder.Property(s => s.ReserveDays).HasDefaultValue(WorkWeek.UsualReserveDays).ValueGeneratedNever();
            builder.Property(s => s.DeliveryDays).HasDefaultValue(WorkWeek.UsualDeliveryDays).ValueGeneratedNever();
        }
    }
}

/// <summary>Where the studio listens for sensors.</summary>
/// <param name="Host">Name or address of the broker.</param>
/// <param name="Port">1883 as a rule, 8883 with TLS.</param>
/// <param name="Tls">True to speak TLS.</param>
/// <param name="User">Empty where it asks for none.</param>
/// <param name="SealedPassword">Protected by the studio's own keys; empty where there is none.</param>
public sealed record BrokerSettings(string Host, int Port = 1883, bool Tls = false, string User = "", string SealedPassword = "");
