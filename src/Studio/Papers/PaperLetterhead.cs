namespace Studio.Papers;

/// <summary>Who the paper is from.</summary>
/// <param name="StudioName">The studio's name, as it signs.</param>
/// <param name="Address">Lines of the postal address, may be empty.</param>
public sealed record PaperLetterhead(string StudioName, IReadOnlyList<string> Address, string? Email = null, string? Phone = null, string? Web = null, string? TaxNumber = null)
{
    /// <summary>Address, then e-mail, phone and page: the lines that are there.</summary>
    internal IEnumerable<string> Lines => Address
        .Concat([Email ?? "", Phone ?? "", Web ?? "", TaxNumber is null ? "" : "Tax number " + TaxNumber])
        .Where(l => !string.IsNullOrWhiteSpace(l));
}

/// <summary>A person on a paper.</summary>
/// <param name="Address">Lines of the postal address, may be empty.</param>
public sealed record PaperPerson(string Name, IReadOnlyList<string> Address, string? Phone = null, string? Email = null);
