namespace Ramwright.App.Web.Errors;

/// <summary>What a person reads when something did not work: what it was, what it means for the work, what to do.</summary>
public sealed record ErrorWords(string Title, string What, string Todo)
{
    public static ErrorWords For(int status) => status switch
    {
        400 => new("That form could not be read", "Something in what was sent makes no sense to the bench, or the form was drawn before the bench was set up anew. Nothing was recorded.", "Go back, load the page again and fill it in once more."),
        404 => new("There is no such sheet", "Nothing in this house has that address. A job number or a serial number may be mistyped.", "Look on the rack or among the tools."),
        405 => new("That cannot be done here", "The address exists, but not for what was asked of it.", "Go back and use the buttons of the page."),
        409 => new("Somebody was quicker", "Another tablet signed something for this job since this page was drawn. What you sent was not recorded.", "Go back, load the page again and look at what was signed."),
        410 => new("The service model is gone", "The model that this job was taken in with is no longer on the shelf, or does not read any more. The job itself is whole.", "Put the model's file back among the models, see that ramwright check passes it, and start the bench again."),
        413 => new("That file is too large", "The bench takes forms up to 1 MB and files up to 8 MB. Nothing was recorded.", "Send a smaller file."),
        503 => new("The ledger cannot be written", "The database is locked, damaged, or its disk is full. What you sent was not recorded, and nothing is half written.", "Free some space or wait for the other program, then send the form again: it is recorded once, however often it is sent. Until then write on paper."),
        _ => new("The bench made a mistake", "This is a fault of the program, not of what you did. What was in the ledger before is still there.", "Go back and try once more. If it happens again, note the time and what was pressed: the log of the program has the rest."),
    };
}
