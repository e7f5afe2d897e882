using System.CommandLine;
using CutShop.Shop;

namespace CutShop.Cli;

/// <summary><c>person add</c> and <c>person reset</c>: for a shop that has locked itself out.</summary>
internal static class PersonCommand
{
    public static Command Create() => new("person", "Add a person, or give one a new password.") { Add(), Reset() };

    private static Command Add()
    {
        var options = new ShopOptions();
        var name = new Argument<string>("NAME") { Description = "The name, as typed to sign in." };
        var role = new Option<string>("--role") { Description = $"What the person does: {RoleNames.Accepted}.", Required = true };
        var command = new Command("add", "Add a person and print a first password, once.") { name, role, options.Folder, options.Server };
        command.SetAction(async (parsed, cancel) =>
        {
            if (RoleNames.Find(parsed.GetRequiredValue(role)) is not { } found)
                return await RefuseAsync(new("--role", parsed.GetRequiredValue(role), $"accepted: {RoleNames.Accepted}"));
            using var database = options.Open(parsed);
            var password = People.DrawPassword();
            return await TellAsync(await new People(database).AddAsync(parsed.GetRequiredValue(name), found, password, Environment.UserName, cancel), password);
        });
        return command;
    }

    private static Command Reset()
    {
        var options = new ShopOptions();
        var name = new Argument<string>("NAME") { Description = "The person's name." };
        var command = new Command("reset", "Give a person a new password, print it once, and unlock the name.") { name, options.Folder, options.Server };
        command.SetAction(async (parsed, cancel) =>
        {
            using var database = options.Open(parsed);
            var people = new People(database);
            if (people.Find(parsed.GetRequiredValue(name)) is not { } person)
                return await RefuseAsync(new("NAME", parsed.GetRequiredValue(name), "accepted: the name of a person of this shop"));
            var password = People.DrawPassword();
            return await TellAsync(await people.SetPasswordAsync(person.Id, password, Environment.UserName, cancel), password);
        });
        return command;
    }

    private static async Task<int> TellAsync(PersonAnswer answer, string password)
    {
        if (answer.Problem is { } problem)
            return await RefuseAsync(problem);
        Console.WriteLine($"Password, shown only now: {password}");
        return Exit.Done;
    }

    private static async Task<int> RefuseAsync(FieldProblem problem)
    {
        await Console.Error.WriteLineAsync(problem.Value.Length == 0 ? $"{problem.Field}: {problem.Text}" : $"{problem.Field}: \"{problem.Value}\"; {problem.Text}");
        return Exit.BadInput;
    }
}
