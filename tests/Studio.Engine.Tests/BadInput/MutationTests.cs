using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Studio.Engine.Tests.BadInput;

/// <summary>The page's examples, spoilt token by token: the answer is a result or errors, soon, and never an exception. The same seeds every time.</summary>
public sealed partial class MutationTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private static readonly string[] Extremes =
    [
        "0", "-0", "-1", "1", "1e-300", "1e-9", "1e9", "1e15", "1e28", "1e300", "1e308", "1e999", "-1e308", "5e-324", "0.1", "12", "60", "300", "10000", "79228162514264337593543950335",
        "2147483648", "NaN", "null", "true", "\"\"", "\"1e5\"", "\"\\ud800\"", "[]", "{}", "[{}]",
    ];

    [Theory]
    [InlineData("layers", 600)]
    [InlineData("price", 600)]
    [InlineData("cure", 80)] // a fit takes a tenth of a second and more
    [InlineData("time", 80)]
    [Trait("Slow", "draws")]
    public void An_answer_whatever_became_of_an_example(string calculation, int times) => Try(calculation, times);

    [Fact]
    [Trait("Slow", "solver")]
    public void The_heat_answers_too() => Try("heat", 300);

    // 100 g of a part of 5e-324 g/ml would be more millilitres than any number holds
    [Fact]
    public void A_figure_that_no_number_holds_is_refused() =>
        Ask.Errors("layers", Inputs.Whole["layers"].With("resins.r.mix.densityAGPerMl", "5e-324")).ShouldHaveSingleItem().Message.ShouldContain("too large to work with");

    private static void Try(string calculation, int times)
    {
        var examples = Inputs.Documented.Where(e => e.Calculation == calculation).Select(e => Token().Matches(e.Json).Select(m => m.Value).ToArray()).ToArray();
        examples.ShouldNotBeEmpty();
        var (good, slowest) = (0, (Seconds: 0.0, Seed: 0));
        for (var seed = 0; seed < times; seed++)
        {
            var random = new Random(seed);
            var text = Spoilt([.. examples[seed % examples.Length]], random);
            var watch = Stopwatch.StartNew();
            var answer = Calculations.Run(calculation, text);
            slowest = watch.Elapsed.TotalSeconds > slowest.Seconds ? (watch.Elapsed.TotalSeconds, seed) : slowest;
            good += answer.ExitCode == 0 ? 1 : 0;
            watch.Elapsed.ShouldBeLessThan(Longest, $"seed {seed}: {text}");
            answer.ExitCode.ShouldBeOneOf(0, 2);
            JsonElement.Parse(answer.Json).TryGetProperty("errors", out _).ShouldBe(answer.ExitCode == 2);
            answer.Json.ShouldNotContain("Exception", customMessage: text);
        }

        // a good many are still good: the arithmetic is put to them, not only the reading
        TestContext.Current.TestOutputHelper!.WriteLine($"{good} of {times}; the slowest was seed {slowest.Seed} with {slowest.Seconds:0.0} s");
        good.ShouldBeGreaterThan(times / 20);
    }

    // one or two changes; numbers are what a person mistypes most
    private static string Spoilt(List<string> tokens, Random random)
    {
        for (var changes = random.Next(1, 3); changes > 0 && tokens.Count > 1; changes--)
        {
            var at = random.Next(tokens.Count);
            switch (random.Next(15))
            {
                case 0:
                    tokens.RemoveAt(at);
                    break;
                case 1:
                    tokens.Insert(at, tokens[at]);
                    break;
                case 2:
                    tokens[at] = tokens[random.Next(tokens.Count)];
                    break;
                default:
                    var numbers = Enumerable.Range(0, tokens.Count).Where(i => char.IsAsciiDigit(tokens[i][^1])).ToList();
                    tokens[numbers.Count == 0 ? at : numbers[random.Next(numbers.Count)]] = Extremes[random.Next(Extremes.Length)];
                    break;
            }
        }

        return string.Join(' ', tokens);
    }

    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"|-?[0-9][-+.0-9eE]*|[a-z]+|[{}\\[\\],:]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
