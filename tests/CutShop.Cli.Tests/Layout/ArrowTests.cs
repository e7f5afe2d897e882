using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace CutShop.Cli.Tests.Layout;

/// <summary>The compiled program against the table of DEVELOPERS.md that says which folder may use which.</summary>
public sealed class ArrowTests
{
    private static readonly string[] Projects = ["CutShop.Takeoff", "CutShop.CutPlan", "CutShop.Shop", "CutShop.Paper", "CutShop.Web"];

    private static readonly Lazy<Architecture> Program = new(() => new ArchLoader().LoadAssemblies([.. Projects.Select(System.Reflection.Assembly.Load)]).Build());

    [Fact]
    public void The_table_of_arrows_has_no_circle()
    {
        foreach (var folder in ContributorGuide.Arrows.Keys)
            Assert.DoesNotContain(folder, Reached(folder));
    }

    [Fact]
    public void No_folder_uses_another_that_the_table_does_not_allow()
    {
        var wrong = Uses().Where(use => !ContributorGuide.Arrows[use.From].Contains(use.To, StringComparer.Ordinal)).ToList();
        Assert.True(wrong.Count == 0, string.Join('\n', wrong.Select(use => $"{use.From} uses {use.To}: {use.Types}")));
    }

    [Fact]
    public void Every_arrow_of_the_table_is_there()
    {
        var used = Uses().Select(use => (use.From, use.To)).ToHashSet();
        foreach (var (folder, others) in ContributorGuide.Arrows)
            Assert.All(others, other => Assert.True(used.Contains((folder, other)), $"{folder} no longer uses {other}."));
    }

    [Fact]
    public void Every_folder_of_a_project_is_in_the_table_and_has_a_namespace_of_its_name()
    {
        var folders = Projects.SelectMany(project => Directory.EnumerateDirectories(Path.Combine(ContributorGuide.Root, "src", project))
            .Select(Path.GetFileName).Where(name => name is not ("bin" or "obj")).Select(name => $"{project}/{name}"));
        Assert.Equal(folders.Order(StringComparer.Ordinal), ContributorGuide.Arrows.Keys.Order(StringComparer.Ordinal));

        var known = ContributorGuide.Arrows.Keys.Select(folder => folder.Replace('/', '.')).Concat(Projects).ToHashSet(StringComparer.Ordinal);
        Assert.All(OwnTypes(), type => Assert.Contains(type.Namespace.FullName, known));
    }

    private static IEnumerable<IType> OwnTypes() => Program.Value.Types.Where(type =>
        Projects.Any(project => type.Namespace.FullName == project || type.Namespace.FullName.StartsWith(project + ".", StringComparison.Ordinal)));

    /// <summary>Which folder uses which other one of its project, and some of the types or files by which it does.</summary>
    private static IEnumerable<(string From, string To, string Types)> Uses() => OwnTypes()
        .SelectMany(type => type.Dependencies.Where(dependency => dependency.Target is not GenericParameter)
            .Select(dependency => (From: FolderOf(type), To: FolderOf(dependency.Target), Types: $"{type.Name} -> {dependency.Target.Name}")))
        .Concat(Imports())
        .Where(use => use.From is not null && use.To is not null && use.From != use.To && ProjectOf(use.From) == ProjectOf(use.To))
        .GroupBy(use => (use.From, use.To))
        .Select(same => (same.Key.From!, same.Key.To!.Split('/')[1], string.Join(", ", same.Select(use => use.Types).Distinct(StringComparer.Ordinal).Take(8))));

    /// <summary>What files name: a constant of another folder leaves no trace in the compiled program.</summary>
    private static IEnumerable<(string? From, string? To, string Types)> Imports() =>
        from folder in ContributorGuide.Arrows.Keys
        from file in Directory.EnumerateFiles(Path.Combine(ContributorGuide.Root, "src", folder), "*.cs", SearchOption.AllDirectories)
        from line in File.ReadLines(file)
        where line.StartsWith("using CutShop.", StringComparison.Ordinal)
        let used = line["using ".Length..^1].Split('.')
        where used.Length == 3
        select ((string?)folder, (string?)$"{used[0]}.{used[1]}/{used[2]}", Path.GetFileName(file));

    private static string? FolderOf(IType type) =>
        Projects.FirstOrDefault(project => type.Namespace?.FullName.StartsWith(project + ".", StringComparison.Ordinal) == true) is { } project
            ? $"{project}/{type.Namespace.FullName[(project.Length + 1)..]}"
            : null;

    private static string ProjectOf(string folder) => folder.Split('/')[0];

    private static HashSet<string> Reached(string folder)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var next = new Queue<string>([folder]);
        while (next.TryDequeue(out var from))
        {
            foreach (var to in ContributorGuide.Arrows[from].Select(other => $"{ProjectOf(from)}/{other}").Where(reached.Add))
                next.Enqueue(to);
        }
        return reached;
    }
}
