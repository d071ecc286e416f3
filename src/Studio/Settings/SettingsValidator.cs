using System.Globalization;
using FluentValidation;
using Studio.Engine.Price;

namespace Studio.Settings;

/// <summary>Checks the studio's own figures.</summary>
public sealed class SettingsValidator : AbstractValidator<StudioSettings>
{
    private const int LongestName = 100;
    private const int MostPlaces = 200;
    private const int MostDaysOff = 1000;

    public SettingsValidator()
    {
        RuleFor(s => s.StudioName).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("What is the studio called? It stands on every paper.")
            .Must(n => n.Length <= LongestName).WithMessage("The studio's name is longer than 100 characters. Shorten it.");
        RuleFor(s => s.Email).Must(e => e.Length == 0 || (e.Contains('@', StringComparison.Ordinal) && !e.Any(char.IsWhiteSpace) && e.Length <= 254))
            .WithMessage("The studio's e-mail needs a name, an @ and a domain, such as studio@example.org.");
        RuleFor(s => s.Address).Must(a => a.Length <= 1000).WithMessage("The address is longer than 1000 characters. Shorten it.");
        RuleFor(s => s.Phone).Must(p => p.Length <= 60).WithMessage("The telephone number is longer than 60 characters. Shorten it.");
        RuleFor(s => s.TaxName).Must(t => t.Trim().Length is > 0 and <= 30).WithMessage("What is the tax called? Up to 30 characters, such as VAT.");
        RuleFor(s => s.Currency).Must(c => Currencies.MinorDigits(c) is not null).WithMessage("Choose a currency from the list: three capital letters of ISO 4217, such as GBP or EUR.");
        RuleFor(s => s.TimeZone).Must(z => TimeZoneInfo.TryFindSystemTimeZoneById(z, out _)).WithMessage("Choose a time zone from the list, such as Europe/London.");
        RuleFor(s => s.Units).Must(u => u is "metric" or "inch").WithMessage("Choose how lengths are shown: millimetres or inches.");
        RuleFor(s => s.Paper).Must(p => p is "A4" or "Letter").WithMessage("Choose the paper: A4 or Letter.");
        RuleFor(s => s.PublicUrl).Must(u => u.Length == 0 || (Uri.TryCreate(u, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && u.Length <= 200))
            .WithMessage("The address for phones begins with http:// or https://, such as https://studio.example.org. Leave it empty to use the address the page was opened with.");
        RuleFor(s => s.Places).Must(p => p.Count <= MostPlaces && p.TrueForAll(n => n.Length is > 0 and <= LongestName)).WithMessage("Each place needs a name of at most 100 characters.")
            .Must(p => p.Distinct(StringComparer.OrdinalIgnoreCase).Count() == p.Count).WithMessage("Two places have the same name. Tell them apart, or remove one.");
        RuleFor(s => s.WorkDays).Must(d => d.Count > 0).WithMessage("Choose at least one working day: without one nothing is ever ready.")
            .Must(d => d.TrueForAll(key => WorkWeek.All.Any(w => w.Key == key)) && d.Distinct(StringComparer.Ordinal).Count() == d.Count).WithMessage("Choose each working day once, from Monday to Sunday.");
        RuleFor(s => s.WorkUntil).Must((s, until) => s.WorkFrom < until).WithMessage("The working day must end after it begins, on the same day.");
        RuleFor(s => s.WorkMinutesPerDay).Must((s, minutes) => s.WorkFrom >= s.WorkUntil || minutes <= (s.WorkUntil - s.WorkFrom).TotalMinutes)
            .WithMessage(s => string.Create(CultureInfo.InvariantCulture, $"One piece cannot have more minutes than the working day, which has {(s.WorkUntil - s.WorkFrom).TotalMinutes:0}."));
        RuleFor(s => s.DaysOff).Must(d => d.Count <= MostDaysOff).WithMessage("There are more than 1000 days off. Remove those that are past.");
        RuleFor(s => s.UsualRoomC).Must(c => c is null or (>= WorkWeek.LowestRoomC and <= WorkWeek.HighestRoomC))
            .WithMessage("The room's usual temperature must be between 5 and 40 °C. Leave it empty to go by what the room was of late.");
        foreach (var figure in Figure.All)
        {
            RuleFor(s => figure.Number(s)).Must(figure.Allows).WithMessage(figure.Range).OverridePropertyName(figure.Key);
        }

        RuleFor(s => s.RoundTo).Must((s, step) => Currencies.MinorDigits(s.Currency) is not { } digits || step % Currencies.MinorUnit(digits) == 0)
            .WithMessage(s => string.Create(CultureInfo.InvariantCulture, $"Round to a whole multiple of the smallest coin of {s.Currency}."));
    }
}
