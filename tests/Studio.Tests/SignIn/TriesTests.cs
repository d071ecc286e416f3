using Microsoft.Extensions.Time.Testing;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>The waits between tries: our own figures; that tries are slowed and nobody is shut out is OWASP ASVS 5.0, 6.3.1 (from memory).</summary>
public sealed class TriesTests
{
    private readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));
    private readonly Tries tries;

    public TriesTests() => tries = new Tries(clock);

    [Fact]
    public void The_waits_are_none_none_then_one_second_doubling_to_a_quarter_of_an_hour() =>
        Enumerable.Range(1, 15).Select(n => Tries.Wait(n, Tries.FreeHere).TotalSeconds).ShouldBe([0, 0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900]);

    [Fact]
    public void A_place_waits_for_its_own_wrong_tries_and_another_place_does_not()
    {
        Fail("wren", "192.0.2.7", 3).ShouldBe(3);
        tries.Begin("wren", "192.0.2.7", null).ShouldBeFalse();
        tries.Begin("wren", "198.51.100.1", null).ShouldBeTrue();
        tries.Begin("ash", "192.0.2.7", null).ShouldBeTrue();
        clock.Advance(TimeSpan.FromSeconds(1));
        tries.Begin("wren", "192.0.2.7", null).ShouldBeTrue();
    }

    [Fact]
    public void A_try_that_came_too_soon_makes_the_wait_no_longer()
    {
        Fail("wren", "192.0.2.7", 3);
        for (var i = 0; i < 50; i++)
        {
            tries.Begin("wren", "192.0.2.7", null).ShouldBeFalse();
        }

        clock.Advance(TimeSpan.FromSeconds(1));
        tries.Begin("wren", "192.0.2.7", null).ShouldBeTrue();
    }

    [Fact]
    public void The_right_password_lets_its_place_begin_afresh()
    {
        Fail("wren", "192.0.2.7", 2);
        tries.Begin("wren", "192.0.2.7", null).ShouldBeTrue();
        tries.Right("wren", "192.0.2.7", null);
        Fail("wren", "192.0.2.7", 3).ShouldBe(3);
    }

    [Fact]
    public void Guessing_from_many_places_is_slowed_and_shuts_nobody_out_who_comes_from_a_known_network()
    {
        var guesses = Enumerable.Range(0, 200).Count(i => tries.Begin("wren", $"198.51.100.{i}", null));
        guesses.ShouldBe(Tries.FreeEverywhere);

        tries.Begin("wren", "192.0.2.7", "192.0.2.0/24").ShouldBeTrue();
        tries.Begin("wren", "203.0.113.9", null).ShouldBeFalse("a place nobody knows waits with the rest");
    }

    [Fact]
    public void A_day_of_such_guessing_gets_fewer_than_a_hundred_and_fifty_answers()
    {
        var answers = 0;
        for (var second = 0; second < 24 * 3600; second += 5)
        {
            answers += tries.Begin("wren", $"198.51.{second / 5 % 250}.1", null) ? 1 : 0;
            clock.Advance(TimeSpan.FromSeconds(5));
        }

        answers.ShouldBeInRange(90, 150);
    }

    [Fact]
    public void Many_at_once_get_no_more_answers_than_one_after_the_other()
    {
        var answered = 0;
        Parallel.For(0, 64, _ =>
        {
            if (tries.Begin("wren", "192.0.2.7", null))
            {
                Interlocked.Increment(ref answered);
            }
        });
        answered.ShouldBe(Tries.FreeHere);
    }

    [Fact]
    public void Trying_thousands_of_names_neither_fills_the_memory_nor_frees_the_one_who_waits_longest()
    {
        for (var i = 0; i < 12; i++)
        {
            tries.Begin("wren", "192.0.2.7", null).ShouldBeTrue();
            clock.Advance(Tries.Wait(i + 1, Tries.FreeHere));
        }

        tries.Begin("wren", "192.0.2.7", null).ShouldBeTrue();
        for (var i = 0; i < 15_000; i++)
        {
            tries.Begin($"nobody {i}", "203.0.113.9", null);
        }

        tries.Begin("wren", "192.0.2.7", null).ShouldBeFalse();
    }

    private int Fail(string person, string here, int times) => Enumerable.Range(0, times).Count(_ => tries.Begin(person, here, null));
}
