using CsCheck;
using Studio.Engine.Custody;

namespace Studio.Engine.Tests.Custody;

public sealed class EntryNumberTests
{
    private const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    private static readonly Gen<EntryNumber> Numbers = Gen.Select(Gen.Int[2000, 2099], Gen.Int[1, 99_999], EntryNumber.Create);

    // python-stdnum (LGPL-2.1), doctest of iso7064.mod_37_36, commit 006192e5
    [Fact]
    public void Check_character_agrees_with_the_published_example() => CheckCharacter.For("A12425GABC1234002").ShouldBe('M');

    // computed with a separate script in another language, same recurrence
    [Theory]
    [InlineData(2026, 42, "KS-26-00042-L")]
    [InlineData(2020, 19_941, "KS-20-19941-0")]
    public void Is_printed_with_its_check_character(int year, int running, string printed) =>
        EntryNumber.Create(year, running).ToString().ShouldBe(printed);

    [Fact]
    public void Every_number_reads_back() =>
        Numbers.Sample(n => EntryNumber.TryParse(n.ToString(), out var read) && read == n);

    [Theory]
    [InlineData("ks-26-00042-l")]
    [InlineData(" KS 26 00042 L ")]
    [InlineData("KS2600042L")]
    [InlineData("KS–26–00042–L")]
    [InlineData("ks-26-ooo42-l")]
    public void Is_read_as_people_type_it(string typed)
    {
        EntryNumber.TryParse(typed, out var read).ShouldBeTrue();
        read.ShouldBe(EntryNumber.Create(2026, 42));
    }

    [Fact]
    public void Letter_for_digit_is_never_guessed_in_the_check_character()
    {
        var number = Enumerable.Range(1, 200).Select(n => EntryNumber.Create(2026, n)).First(n => n.Check == '0');
        EntryNumber.TryParse(number.ToString()[..^1] + "O", out _).ShouldBeFalse();
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("KS-26-00042")]
    [InlineData("KX-26-00042-L")]
    [InlineData("KS-26-00042-?")]
    [InlineData("KS-26-00042-LL")]
    [InlineData("KS-26-٠٠٠٤٢-L")]
    public void What_is_not_an_entry_number_is_refused_with_what_one_looks_like(string? typed)
    {
        var outcome = EntryNumber.Parse(typed);
        outcome.Ok.ShouldBeFalse();
        outcome.Errors.Single().Message.ShouldContain("looks like KS-26-00042-L");
    }

    [Fact]
    public void Example_in_the_message_is_itself_a_right_number() => EntryNumber.TryParse("KS-26-00042-L", out _).ShouldBeTrue();

    [Fact]
    public void One_wrong_character_is_always_found() =>
        Gen.Select(Numbers, Gen.Int[0, 9], Gen.Char[Alphabet]).Sample((number, at, wrong) =>
        {
            var plain = number.ToString().Replace("-", "", StringComparison.Ordinal);
            if (plain[at] == wrong || SameWhenTyped(plain[at], wrong, at))
            {
                return true;
            }

            return !EntryNumber.TryParse(plain[..at] + wrong + plain[(at + 1)..], out _);
        });

    // ISO 7064's hybrid systems find nearly every transposition; those that they miss are counted here, not hidden
    [Fact]
    public void Swapped_neighbours_are_found_but_for_three_in_a_thousand()
    {
        int swaps = 0, missed = 0;
        for (var running = 1; running <= 99_999; running++)
        {
            var plain = EntryNumber.Create(2026, running).ToString().Replace("-", "", StringComparison.Ordinal);
            for (var i = 0; i < 9; i++)
            {
                if (plain[i] != plain[i + 1])
                {
                    swaps++;
                    missed += EntryNumber.TryParse(plain[..i] + plain[i + 1] + plain[i] + plain[(i + 2)..], out _) ? 1 : 0;
                }
            }
        }

        swaps.ShouldBeGreaterThan(500_000);
        (missed / (double)swaps).ShouldBeLessThan(0.003);
    }

    [Theory]
    [InlineData(1999, 1)]
    [InlineData(2100, 1)]
    [InlineData(2026, 0)]
    [InlineData(2026, 100_000)]
    public void Numbers_beyond_the_format_are_refused(int year, int running) =>
        Should.Throw<ArgumentOutOfRangeException>(() => EntryNumber.Create(year, running));

    // ICAO spelling alphabet, Annex 10, from memory
    [Fact]
    public void Is_spelt_for_the_telephone() =>
        SpokenAlphabet.Words(EntryNumber.Create(2026, 42)).ShouldBe("Kilo Sierra, two six, zero zero zero four two, Lima");

    [Fact]
    public void Every_letter_and_digit_has_its_own_word()
    {
        Alphabet.Select(SpokenAlphabet.Word).Distinct().Count().ShouldBe(36);
        Alphabet.Where(char.IsLetter).ShouldAllBe(c => SpokenAlphabet.Word(c)[0] == c);
        Should.Throw<ArgumentException>(() => SpokenAlphabet.Word('-'));
    }

    [Theory]
    [InlineData("")]
    [InlineData("ks")]
    [InlineData("K-S")]
    public void Check_character_refuses_what_is_not_in_its_alphabet(string payload) =>
        Should.Throw<ArgumentException>(() => CheckCharacter.For(payload));

    private static bool SameWhenTyped(char right, char wrong, int at) =>
        at is >= 2 and <= 8 && ((right == '0' && wrong == 'O') || (right == '1' && wrong is 'I' or 'L' && right == '1'));
}
