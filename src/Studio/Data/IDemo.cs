namespace Studio.Data;

/// <summary>Loads the demo studio into an empty database.</summary>
public interface IDemo
{
    /// <summary>E-mail and password of the demo's owner, shown on the sign-in page of a demo studio and nowhere else.</summary>
    const string Email = "owner@studio.example";

    const string Password = "heather-and-brass";

    /// <summary>Loads it; refused on a database that holds anything; done already is fine.</summary>
    Task<Saved> LoadAsync();
}
