using CutShop.Shop.People;
using CutShop.Web.Shared;

namespace CutShop.Web.People;

/// <summary>What the log says of tries to sign in that went wrong: for whoever watches it. A name that nobody has may be a password in the wrong box, so it is not said.</summary>
internal static partial class SignInLog
{
    private const string Nobody = "nobody";

    public static void Write(ILogger logger, SignInAnswer answer, string way, HttpContext context)
    {
        if (answer.Outcome == SignInOutcome.Wrong)
            Wrong(logger, answer.Tried ?? Nobody, way, AddressGroup.Of(context).ToString());
        else if (answer.Outcome == SignInOutcome.Locked)
            Locked(logger, answer.Tried ?? Nobody, way, AddressGroup.Of(context).ToString(), (int)Math.Ceiling(answer.Wait.TotalSeconds));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "A sign-in failed: the name of {Person}, by {Way}, from {Address}")]
    private static partial void Wrong(ILogger logger, string person, string way, string address);

    [LoggerMessage(Level = LogLevel.Warning, Message = "A sign-in is locked: the name of {Person}, by {Way}, from {Address}, for {Seconds} s")]
    private static partial void Locked(ILogger logger, string person, string way, string address, int seconds);
}
