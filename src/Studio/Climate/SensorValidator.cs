using FluentValidation;

namespace Studio.Climate;

/// <summary>What keeps a sensor from being used.</summary>
public sealed class SensorValidator : AbstractValidator<SensorForm>
{
    public SensorValidator()
    {
        RuleFor(s => s.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give the sensor a name, such as where it hangs.").MaximumLength(60).WithMessage("Keep the name under 60 letters.");
        RuleFor(s => s.Place).MaximumLength(60).WithMessage("Keep the place under 60 letters.");
        RuleFor(s => s.Way).Must(w => w is "post" or "mqtt").WithMessage("Choose how its readings come.");
        RuleFor(s => s.Topic).Must((s, t) => s.Way != "mqtt" || !string.IsNullOrWhiteSpace(t)).WithMessage("Type the topic it publishes to.")
            .Must(t => !t.Contains('#', StringComparison.Ordinal) && !t.Contains('+', StringComparison.Ordinal)).WithMessage("One sensor has one topic: no # and no +.")
            .MaximumLength(200).WithMessage("Keep the topic under 200 letters.");
        RuleFor(s => s.CelsiusField).MaximumLength(100).WithMessage("Keep the field's name under 100 letters.");
        RuleFor(s => s.HumidityField).MaximumLength(100).WithMessage("Keep the field's name under 100 letters.");
        RuleFor(s => s.Unit).Must(u => u is "C" or "F").WithMessage("Choose °C or °F.");
        RuleFor(s => s.CorrectionK).Must(k => k is null or (>= -10 and <= 10)).WithMessage("A correction lies between −10 and 10 K. A sensor further off is broken.");
        RuleFor(s => s.EveryMinutes).Must(m => m is null or (> 0 and <= 1440)).WithMessage("Must be above 0 and at most 1440 min.");
    }
}
