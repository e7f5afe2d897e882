using System.Runtime.CompilerServices;
using Xunit;

namespace CutShop.Testing.Stores;

/// <summary>A test of what only a database file has. It is left out, and counted so, in a run whose shops are on a server.</summary>
public sealed class FileOnlyFactAttribute : FactAttribute
{
    public FileOnlyFactAttribute([CallerFilePath] string? file = null, [CallerLineNumber] int line = -1)
        : base(file, line)
    {
        if (TestStore.IsOnServer)
            Skip = "This is about the database file.";
    }
}
