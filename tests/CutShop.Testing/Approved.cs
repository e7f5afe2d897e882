using System.Runtime.CompilerServices;

namespace CutShop.Testing;

/// <summary>Texts that somebody looked at and approved, in the folder <c>Approved</c> beside the test.</summary>
internal static class Approved
{
    private const string Variable = "CUTSHOP_APPROVE";

    /// <summary>Compares a text with its approved file, or writes that file where the run approves.</summary>
    /// <exception cref="InvalidOperationException">They differ; the message says where, and how to approve.</exception>
    public static void Check(string name, string text, [CallerFilePath] string test = "")
    {
        var file = Path.Combine(Path.GetDirectoryName(test)!, "Approved", name);
        var now = text.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
        if (Environment.GetEnvironmentVariable(Variable) == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, now);
            return;
        }
        var approved = File.Exists(file) ? File.ReadAllText(file) : "";
        if (now != approved)
            throw new InvalidOperationException($"{Difference(name, approved.Split('\n'), now.Split('\n'))}\nTo approve all that this test draws and writes, then look at it with git diff:\n{Command(test)}");
    }

    private static string Difference(string name, string[] approved, string[] now)
    {
        var same = approved.Zip(now).TakeWhile(pair => pair.First == pair.Second).Count();
        return $"{name} is not as approved. Line {same + 1}\n  approved: {approved.ElementAtOrDefault(same) ?? "(ends)"}\n  now:      {now.ElementAtOrDefault(same) ?? "(ends)"}";
    }

    private static string Command(string test)
    {
        var project = Path.GetRelativePath(SourceTree.Root, test).Split(Path.DirectorySeparatorChar)[..2];
        return $"{Variable}=1 dotnet test --project {string.Join('/', project)} --filter-class \"*{Path.GetFileNameWithoutExtension(test)}\"";
    }
}
