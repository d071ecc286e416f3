namespace Studio.Data;

/// <summary>
/// Marks an interface by which one room asks another without knowing it: declared where the question is, answered where the records are.
/// The host registers whoever answers, as a singleton.
/// </summary>
public interface IAsked;
