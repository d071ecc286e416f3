using System.Numerics;

namespace Studio.Engine.Meshes;

/// <summary>Numbers vertices as a file is read, equal ones (to the last bit) alike. Open addressing over flat arrays: no object a facet.</summary>
internal sealed class VertexWeld
{
    private double[] xyz;
    private int[] slots;
    private int shift;

    /// <summary>Begins with room for as many vertices; it grows as needed.</summary>
    public VertexWeld(int expected)
    {
        var room = BitOperations.RoundUpToPowerOf2((uint)Math.Clamp(expected, 16, 1 << 28) * 2);
        (slots, shift) = (new int[room], 64 - BitOperations.Log2(room));
        xyz = new double[3 * Math.Max(16, expected)];
    }

    /// <summary>Vertices so far.</summary>
    public int Count { get; private set; }

    /// <summary>The number of this vertex.</summary>
    public int Add(double x, double y, double z)
    {
        (x, y, z) = (x + 0.0, y + 0.0, z + 0.0); // −0 is 0
        var slot = Slot(x, y, z);
        if (slots[slot] != 0)
        {
            return slots[slot] - 1;
        }

        if (2 * (Count + 1) > slots.Length)
        {
            Grow();
            slot = Slot(x, y, z);
        }

        if (3 * (Count + 1) > xyz.Length)
        {
            Array.Resize(ref xyz, Math.Max(xyz.Length + 48, xyz.Length / 3 / 2 * 3 * 3));
        }

        (xyz[3 * Count], xyz[(3 * Count) + 1], xyz[(3 * Count) + 2]) = (x, y, z);
        slots[slot] = ++Count;
        return Count - 1;
    }

    /// <summary>x, y, z of every vertex in turn.</summary>
    public double[] Coordinates()
    {
        Array.Resize(ref xyz, 3 * Count);
        return xyz;
    }

    // the slot that holds this vertex, or the free one where it belongs
    private int Slot(double x, double y, double z)
    {
        var bits = (ulong)BitConverter.DoubleToInt64Bits(x);
        bits = (BitOperations.RotateLeft(bits, 21) * 0x9E3779B97F4A7C15UL) ^ (ulong)BitConverter.DoubleToInt64Bits(y);
        bits = (BitOperations.RotateLeft(bits, 21) * 0xC2B2AE3D27D4EB4FUL) ^ (ulong)BitConverter.DoubleToInt64Bits(z);
        bits = (bits ^ (bits >> 32)) * 0x9E3779B97F4A7C15UL;
        var slot = (int)(bits >> shift);
        while (slots[slot] is var at and not 0)
        {
            var i = 3 * (at - 1);
            if (xyz[i] == x && xyz[i + 1] == y && xyz[i + 2] == z)
            {
                return slot;
            }

            slot = (slot + 1) & (slots.Length - 1);
        }

        return slot;
    }

    private void Grow()
    {
        (slots, shift) = (new int[2 * slots.Length], shift - 1);
        for (var v = 0; v < Count; v++)
        {
            slots[Slot(xyz[3 * v], xyz[(3 * v) + 1], xyz[(3 * v) + 2])] = v + 1;
        }
    }
}
