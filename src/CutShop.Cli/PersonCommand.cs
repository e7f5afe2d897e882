using System.CommandLine;
using CutShop.Shop.People;
using CutShop.Shop.Store;

namespace CutShop.Cli;

/// <summary><c>person add</c> and <c>person reset</c>: for a shop that has locked itself out.</summary>
internal static class PersonCommand
{
    public static Command Create() => new("person", CliWords.Say("HelpPerson")) { Add(), Reset() };

    private static Command Add()
    {
        var options = new ShopOptions();
        var name = new Argument<string>("NAME") { Description = CliWords.Say("HelpNewName") };
        var role = new Option<string>("--role") { Description = CliWords.Say("HelpRole"), Required = true };
        var command = new Command("add", CliWords.Say("HelpAdd")) { name, role, options.Folder, options.Server };
        command.SetAction(async (parsed, cancel) =>
        {
            if (RoleNames.Find(parsed.GetRequiredValue(role)) is not { } found)
                return await RefuseAsync(RoleNames.Unknown(parsed.GetRequiredValue(role)) with { Field = "--role" });
            using var database = options.Open(parsed);
            var password = PeopleShelf.DrawPassword();
            return await TellAsync(await new PeopleShelf(database).AddAsync(parsed.GetRequiredValue(name), found, password, Environment.UserName, cancel), password);
        });
        return command;
    }

    private static Command Reset()
    {
        var options = new ShopOptions();
        var name = new Argument<string>("NAME") { Description = CliWords.Say("HelpName") };
        var command = new Command("reset", CliWords.Say("HelpReset")) { name, options.Folder, options.Server };
        command.SetAction(async (parsed, cancel) =>
        {
            using var database = options.Open(parsed);
            var people = new PeopleShelf(database);
            if (people.Find(parsed.GetRequiredValue(name)) is not { } person)
                return await RefuseAsync(new("NAME", parsed.GetRequiredValue(name), CliWords.Of("UnknownName")));
            var password = PeopleShelf.DrawPassword();
            return await TellAsync(await people.SetPasswordAsync(person.Id, password, Environment.UserName, cancel), password);
        });
        return command;
    }

    private static async Task<int> TellAsync(PersonAnswer answer, string password)
    {
        if (answer.Problem is { } problem)
            return await RefuseAsync(problem);
        Console.WriteLine(CliWords.Say("Password", password));
        return Exit.Done;
    }

    private static async Task<int> RefuseAsync(FieldProblem problem)
    {
        await Console.Error.WriteLineAsync(problem.Value.Length == 0 ? $"{problem.Field}: {problem.Text}" : $"{problem.Field}: \"{problem.Value}\"; {problem.Text}");
        return Exit.BadInput;
    }
}
