namespace Studio.Climate;

/// <summary>A sensor's readings around what it sends now, in time's order.</summary>
internal sealed class SensorDay(Sensor sensor, List<Reading> near)
{
    private readonly List<Reading> known = near;

    /// <summary>True for a thermometer that lies in layers.</summary>
    internal bool Probe => sensor.Place.Length == 0;

    internal bool Has(DateTime at) => Find(at) >= 0;

    /// <summary>The last one before a moment that counts.</summary>
    internal PlaceReading? Before(DateTime at)
    {
        for (var i = Place(at) - 1; i >= 0; i--)
        {
            if (known[i].Doubt.Length == 0)
            {
                return new(known[i].At, known[i].Celsius);
            }
        }

        return null;
    }

    internal bool TellsNothingNew(double celsius, double? humidity, DateTime at, TimeSpan within, double kelvin, double percent)
    {
        for (var i = Place(at) - 1; i >= 0 && at - known[i].At < within; i--)
        {
            if (known[i].Doubt.Length == 0)
            {
                // the last that counts, not any: what was warm in between must be seen to cool again
                return Math.Abs(known[i].Celsius - celsius) < kelvin && !(humidity is { } h && !(Math.Abs(h - (known[i].HumidityPercent ?? double.NaN)) < percent));
            }
        }

        return false;
    }

    /// <summary>A doubt where it jumps up; where it confirms an earlier jump, that one counts from now on.</summary>
    internal ReadingDoubt? Jump(double celsius, DateTime at)
    {
        var place = Place(at) - 1;
        if (place >= 0 && known[place] is { Doubt: ReadingDoubts.Spike } waits && Math.Abs(waits.Celsius - celsius) <= ReadingDoubts.ConfirmK)
        {
            waits.Doubt = "";
            return null;
        }

        // a layer's own heat may climb as fast as it likes
        return Probe ? null : ReadingDoubts.OfJump(celsius, at, Before(at));
    }

    internal Reading Add(double celsius, double? humidity, DateTime at, DateTime received, string doubt)
    {
        var reading = new Reading
        {
            At = at,
            Place = sensor.Place,
            Celsius = celsius,
            HumidityPercent = humidity,
            By = sensor.Name,
            SensorId = sensor.Id,
            ReceivedAt = at == received ? null : received,
            Doubt = doubt,
        };
        known.Insert(Place(at), reading);
        return reading;
    }

    private int Find(DateTime at) => known.FindIndex(r => r.At == at);

    // first place whose reading is not before the moment
    private int Place(DateTime at)
    {
        var (low, high) = (0, known.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (known[middle].At < at)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }
}
