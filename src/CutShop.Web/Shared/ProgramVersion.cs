using System.Reflection;

namespace CutShop.Web.Shared;

/// <summary>The version of the program, as in Directory.Build.props.</summary>
public static class ProgramVersion
{
    /// <summary>Such as <c>0.1.0</c>.</summary>
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
