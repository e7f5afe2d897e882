namespace CutShop.Benchmarks.Against;

/// <summary>
/// The program of another commit, built from a worktree of its own that is removed afterwards. What was built is kept under the
/// system's temporary folder by the commit's hash, so that it is built once.
/// </summary>
internal static class BuiltCommit
{
    private const int ShortHash = 7;

    private static readonly string Kept = Path.Combine(Path.GetTempPath(), "cutshop-against");

    /// <summary>The program of a commit, or why there is none.</summary>
    public static (ShopProgram? Program, string? Problem) Of(string commit)
    {
        // With "--end-of-options" nothing that is typed can be an option of git.
        var found = Git("rev-parse", "--verify", "--quiet", "--end-of-options", commit + "^{commit}");
        if (found.ExitCode != 0)
            return (null, $"COMMIT: \"{commit}\": no commit of this repository; accepted: a hash, a branch or a tag, such as main~3");
        var hash = found.Written.Trim();
        var program = new ShopProgram(hash[..ShortHash], Path.Combine(Kept, hash, "cutshop.dll"), IsOld: true);
        if (File.Exists(program.Path))
            return (program, null);
        return Build(hash) is { } problem ? (null, $"COMMIT: \"{commit}\": {problem}") : (program, null);
    }

    /// <summary>The program beside this one.</summary>
    public static ShopProgram Own() => new(
        "this, " + Git("describe", "--always", "--dirty=, changed").Written.Trim(), Path.Combine(AppContext.BaseDirectory, "cutshop.dll"), IsOld: false);

    /// <summary>Builds it; it is whole or not there.</summary>
    /// <returns>Why it is not there, or null.</returns>
    private static string? Build(string hash)
    {
        Console.Error.WriteLine($"building {hash[..ShortHash]}, once");
        var folder = Directory.CreateTempSubdirectory("cutshop-against-").FullName;
        var (source, built) = (Path.Combine(folder, "source"), Path.Combine(folder, "built"));
        try
        {
            var added = Git("worktree", "add", "--detach", source, hash);
            if (added.ExitCode != 0)
                return $"no worktree of it can be made: {added.Trouble.Trim()}";
            var build = Finished.Of(
                "dotnet", "build", Path.Combine(source, "src", "CutShop.Cli"), "-c", "Release", "-o", built, "-v", "quiet", "-nologo", "-m:1", "--disable-build-servers");
            if (build.ExitCode != 0)
                return $"it cannot be built:\n{build.Written}{build.Trouble}";
            Directory.CreateDirectory(Kept);
            // Another run may have been quicker.
            if (!Directory.Exists(Path.Combine(Kept, hash)))
                Directory.Move(built, Path.Combine(Kept, hash));
            return null;
        }
        finally
        {
            Git("worktree", "remove", "--force", source);
            Directory.Delete(folder, recursive: true);
        }
    }

    private static Finished Git(params string[] args) => Finished.Of("git", ["-C", AppContext.BaseDirectory, .. args]);
}
