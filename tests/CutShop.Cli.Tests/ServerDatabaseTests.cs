namespace CutShop.Cli.Tests;

public sealed class ServerDatabaseTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-cli-").FullName;

    [Theory]
    [InlineData("Hostess=nowhere;Password=secret-word", "The connection string is not readable")]
    [InlineData("Host=127.0.0.1;Port=1;Database=x;Username=y;Password=secret-word", "The database server cannot be used")]
    public async Task A_connection_that_leads_nowhere_is_told_without_its_password_and_no_file_is_made_instead(string connection, string told)
    {
        var ran = await Ran.WithAsync(input: null, "person", "add", "Ada", "--role", "owner", "--shop", _folder, "--database", connection);
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains(told, ran.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("secret-word", ran.Output + ran.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder, "cutshop.db")));
    }

    [Theory]
    [InlineData("backup")]
    [InlineData("restore", "a-backup.db")]
    public async Task What_looks_after_a_file_says_so_where_the_database_is_on_a_server(string command, params string[] arguments)
    {
        var ran = await Ran.OnServerAsync("Host=db.example;Password=secret-word", [command, .. arguments, "--shop", _folder]);
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains($"{command} works on files only", ran.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("secret-word", ran.Output + ran.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
