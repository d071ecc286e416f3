using Bunit;
using Microsoft.AspNetCore.Components;
using Studio.Shell;

namespace Studio.Tests.Shell;

/// <summary>
/// No form keeps a number that cannot be read, nor the one that stood there before it. The forms are found in the compiled components;
/// one that has no scene here is red, and a scene that does not show every part of its form is too.
/// </summary>
public sealed partial class NumbersTests : StudioPages
{
    private static readonly Rendered Program = Rendered.In(typeof(Program));

    public static TheoryData<string> Named => [.. Scenes.Keys];

    public static TheoryData<string> Forms => [.. Scenes.Values.Select(s => s.Host.FullName!).Distinct(StringComparer.Ordinal)];

    [Fact]
    public void Every_number_field_stands_where_what_cannot_be_read_is_gathered() => Program.Forgotten().ShouldBeEmpty();

    [Fact]
    public void A_planted_field_that_nothing_gathers_is_seen() =>
        Rendered.In(typeof(Program), typeof(PlantedAsker)).Forgotten().ShouldBe([typeof(PlantedAsker).FullName!]);

    [Fact]
    public void A_planted_field_that_nothing_gathers_refuses_to_stand() =>
        Should.Throw<InvalidOperationException>(() => Render<PlantedAsker>()).Message.ShouldContain("KeptForm");

    [Fact]
    public void Every_form_with_numbers_has_a_scene() =>
        Program.Hosts.Order(StringComparer.Ordinal).ShouldBe(Scenes.Values.Select(s => s.Host.FullName!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

    [Fact]
    public void A_planted_form_without_a_scene_is_seen() =>
        Rendered.In(typeof(Program), typeof(PlantedHost)).Hosts.Except(Program.Hosts, StringComparer.Ordinal).ShouldBe([typeof(PlantedHost).FullName!]);

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task The_scenes_of_a_form_show_every_part_of_it_in_which_a_number_is_typed(string form)
    {
        HashSet<string> shown = [];
        foreach (var (_, open) in Scenes.Values.Where(s => s.Host.FullName == form))
        {
            var (page, _) = await open(this);
            shown.UnionWith(page.FindComponents<IComponent>().Where(c => c.FindComponents<NumberField>().Count > 0).Select(c => c.Instance.GetType().FullName!));
            shown.Add(page.Instance.GetType().FullName!);
        }

        Program.AskersOf(form).Where(a => !shown.Contains(a)).ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Named))]
    public async Task What_cannot_be_read_is_not_kept_nor_is_what_stood_there_before(string name)
    {
        var scene = await Scenes[name].Open(this);
        scene.Count.ShouldBeGreaterThan(0);
        var before = await KeptAsync();
        for (var i = 0; i < scene.Count; i++)
        {
            var was = ((IReadField)scene.Field(i).Instance).Typed;
            foreach (var text in NumberScene.NeverBelowZero(scene.Field(i).Instance) ? (string[])["fifty", "-50"] : ["fifty"])
            {
                var label = $"{((IReadField)scene.Field(i).Instance).Name}: {text} over “{was}”";
                await TypeAsync(scene, scene.Field(i), text);
                await scene.KeepAsync();
                (await KeptAsync() == before).ShouldBeTrue($"{label} was kept, or what stood there before was.");
                scene.Field(i).Find("input").GetAttribute("value").ShouldBe(text, label);
                scene.All("[role=alert], .wrong, .mud-input-error").ShouldNotBeEmpty(label);
                if (text is "fifty" && scene.Good.Label is not null)
                {
                    scene.All("[role=alert]").ShouldContain(a => a.TextContent.Contains(text, StringComparison.Ordinal), label);
                }

                if (scene.Answer.Length > 0)
                {
                    scene.Page.Markup.ShouldNotContain(scene.Answer, Case.Sensitive, label);
                }
            }

            await TypeAsync(scene, scene.Field(i), was);
        }

        if (scene.Answer.Length > 0)
        {
            await TypeAsync(scene, scene.Field(0), scene.Good.Text);
            scene.Page.Markup.ShouldContain(scene.Answer);
        }
        else
        {
            // the same button keeps it once everything can be read
            await TypeAsync(scene, scene.Field(scene.Good.Label!), scene.Good.Text);
            await scene.KeepAsync();
            (await KeptAsync()).ShouldNotBe(before);
        }
    }

    private Task TypeAsync(NumberScene scene, IRenderedComponent<NumberField> field, string text) =>
        scene.TypeAsync(field, text, () => House.Clock.Advance(TimeSpan.FromMilliseconds(300)));
}
