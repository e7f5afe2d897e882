using System.CommandLine;
using CutShop.Paper;

namespace CutShop.Cli;

/// <summary>Options that several commands share.</summary>
internal sealed class ShopOptions
{
    public Option<string> Folder { get; } = new("--shop")
    {
        Description = "The shop's folder: its database and its paper.",
        DefaultValueFactory = _ => "shop",
    };

    public Option<Uri> Address { get; } = new("--address")
    {
        Description = "The site's address as labels carry it, such as https://shop.example.",
        DefaultValueFactory = _ => new Uri("http://localhost:5080"),
    };

    public Option<bool> Metric { get; } = new("--metric") { Description = "Millimetres first, feet and inches second; A4 paper." };

    /// <summary>Page, units and words as the options say.</summary>
    public PaperSettings PaperOf(ParseResult parsed) => parsed.GetValue(Metric)
        ? PaperSettings.Default with { Units = UnitsFirst.Millimetres, Page = PageSize.A4 }
        : PaperSettings.Default;

    /// <summary>The database in the shop's folder.</summary>
    public string DatabaseOf(ParseResult parsed) => Path.Combine(parsed.GetRequiredValue(Folder), "cutshop.db");
}
