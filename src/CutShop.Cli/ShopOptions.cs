using System.CommandLine;
using System.CommandLine.Parsing;
using CutShop.Paper.Words;
using CutShop.Shop.Maintenance;
using CutShop.Shop.Site;
using CutShop.Shop.Store;

namespace CutShop.Cli;

/// <summary>Options that several commands share.</summary>
internal sealed class ShopOptions
{
    private const string ServerVariable = "CUTSHOP_DATABASE";

    public Option<string> Folder { get; } = new("--shop")
    {
        Description = CliWords.Say("HelpShop"),
        DefaultValueFactory = _ => "shop",
    };

    public Option<string?> Server { get; } = new("--database")
    {
        Description = CliWords.Say("HelpDatabase", ServerVariable),
    };

    public Option<Uri> Address { get; } = new("--address")
    {
        Description = CliWords.Say("HelpAddress"),
        DefaultValueFactory = _ => new Uri(ServeCommand.UsualListen),
        CustomParser = AddressIn,
    };

    public Option<bool> Metric { get; } = new("--metric") { Description = CliWords.Say("HelpMetric") };

    private static Uri? AddressIn(ArgumentResult result)
    {
        var address = LabelAddressShelf.Parse(result.Tokens[0].Value);
        if (!address.IsGood)
            result.AddError(CliWords.Say("BadAddress", result.Tokens[0].Value, address.Problem));
        return address.IsGood ? address.Value : null;
    }

    /// <summary>
    /// The address given, or else where the site listens, so that a label leads somewhere. To listen on every address, as in
    /// <c>http://*:80</c>, is no address to go to: then it is the usual one.
    /// </summary>
    public Uri AddressOf(ParseResult parsed, string listen) =>
        parsed.GetResult(Address) is not { Implicit: false } && Uri.TryCreate(listen.Split(';')[0], UriKind.Absolute, out var own)
            ? own
            : parsed.GetRequiredValue(Address);

    /// <summary>Page, units and words as the options say.</summary>
    public PaperSettings PaperOf(ParseResult parsed) => parsed.GetValue(Metric)
        ? PaperSettings.Default with { Units = UnitsFirst.Millimetres, Page = PageSize.A4 }
        : PaperSettings.Default;

    /// <summary>The shop's database, open: on the server that was named, else the file in the shop's folder. One of an older program is brought up to date first.</summary>
    public ShopDatabase Open(ParseResult parsed)
    {
        var place = PlaceOf(parsed);
        UpgradeCommand.MakeIfDue(place, ShopFolder.BackupsIn(place.Folder));
        return place.Open(TimeProvider.System);
    }

    /// <summary>Where the shop is.</summary>
    public ShopPlace PlaceOf(ParseResult parsed) => new(
        parsed.GetRequiredValue(Folder),
        (parsed.GetValue(Server) ?? Environment.GetEnvironmentVariable(ServerVariable)) is { Length: > 0 } connection ? connection : null);

    /// <summary>Has a command that looks after a database file say so where the shop's database is on a server.</summary>
    public static void WorksOnAFile(Command command) => command.Validators.Add(result =>
    {
        if (Environment.GetEnvironmentVariable(ServerVariable) is { Length: > 0 })
            result.AddError(CliWords.Say("FilesOnly", ServerVariable, command.Name));
    });

    /// <summary>The database in the shop's folder.</summary>
    public string DatabaseOf(ParseResult parsed) => ShopFolder.DatabaseIn(parsed.GetRequiredValue(Folder));
}
