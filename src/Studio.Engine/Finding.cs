namespace Studio.Engine;

/// <summary>How much a finding weighs: a note informs, a warning asks for a look, a stop must not be passed.</summary>
public enum Severity
{
    /// <summary>Worth knowing.</summary>
    Note,

    /// <summary>Look before going on.</summary>
    Warn,

    /// <summary>Do not go on.</summary>
    Stop,
}

/// <summary>A stated doubt of the trade: what, how grave, where, what to do, and where the rule comes from.</summary>
/// <param name="Code">Stable kebab-case key, such as <c>pour-too-deep</c>.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Path">Field it concerns, such as <c>layers[1].toMm</c>; empty when it concerns the whole.</param>
/// <param name="Message">A whole sentence that says what is wrong and what to do.</param>
/// <param name="Source">Standard, handbook or 'common practice, no source'.</param>
public sealed record Finding(string Code, Severity Severity, string Path, string Message, string Source);

/// <summary>An input that cannot be used: the field's path and what to do about it.</summary>
/// <param name="Path">Field path in the JSON's own names, such as <c>layers[1].toMm</c>.</param>
/// <param name="Message">A whole sentence.</param>
/// <param name="Code">Stable kebab-case key for those who must tell one error from another; the sentence is for people alone. Empty where nobody has to.</param>
public sealed record InputError(string Path, string Message, string Code = "");

/// <summary>Either a result or every input error at once; never both, never neither.</summary>
/// <typeparam name="T">The result's type.</typeparam>
public sealed class Outcome<T>
    where T : class
{
    private readonly T? value;

    private Outcome(T? value, IReadOnlyList<InputError> errors) => (this.value, Errors) = (value, errors);

    /// <summary>All that is wrong with the input; empty when there is a result.</summary>
    public IReadOnlyList<InputError> Errors { get; }

    /// <summary>True when there is a result.</summary>
    public bool Ok => value is not null;

    /// <summary>The result.</summary>
    /// <exception cref="InvalidOperationException">The input had errors; look at <see cref="Errors"/> first.</exception>
    public T Value => value ?? throw new InvalidOperationException("No result: " + string.Join(" ", Errors.Select(e => e.Path + ": " + e.Message)));

    /// <summary>Wraps a result.</summary>
    public static Outcome<T> Of(T value) => new(value, []);

    /// <summary>Wraps errors; at least one.</summary>
    /// <exception cref="ArgumentException">There is no error.</exception>
    public static Outcome<T> Refused(IReadOnlyList<InputError> errors) =>
        errors.Count > 0 ? new(null, errors) : throw new ArgumentException("A refusal needs at least one error.", nameof(errors));
}
