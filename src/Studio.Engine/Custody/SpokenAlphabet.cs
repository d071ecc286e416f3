namespace Studio.Engine.Custody;

/// <summary>Words to read a number out over the telephone: the ICAO spelling alphabet (Annex 10, from memory) and plain digits.</summary>
public static class SpokenAlphabet
{
    private static readonly string[] Letters =
    [
        "Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo", "Lima", "Mike",
        "November", "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor", "Whiskey", "X-ray", "Yankee", "Zulu",
    ];

    private static readonly string[] Digits = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    /// <summary>The word for a letter or digit.</summary>
    /// <exception cref="ArgumentException">Neither A–Z nor 0–9.</exception>
    public static string Word(char c) => char.ToUpperInvariant(c) switch
    {
        >= 'A' and <= 'Z' and var letter => Letters[letter - 'A'],
        >= '0' and <= '9' and var digit => Digits[digit - '0'],
        _ => throw new ArgumentException($"'{c}' is not A–Z or 0–9.", nameof(c)),
    };

    /// <summary>A whole entry number, with a comma for each dash: <c>Kilo Sierra, two six, zero zero zero four two, Lima</c>.</summary>
    public static string Words(EntryNumber number) =>
        string.Join(", ", number.ToString().Split('-').Select(part => string.Join(' ', part.Select(Word))));
}
