using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Studio.Clock;

#nullable disable

namespace Studio.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class CureAndHeat : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Broker",
                table: "StudioSettings",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "CupGelMinutes",
                table: "Resin",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "CupPeakC",
                table: "Resin",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "LimitC",
                table: "Resin",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Doubt",
                table: "Reading",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<DateTime>(
                name: "ReceivedAt",
                table: "Reading",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "SensorId",
                table: "Reading",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Foretold",
                table: "Pour",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Kinetics",
                table: "Pour",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "WaitHours",
                table: "PieceLayer",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "PotId",
                table: "Piece",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "RoomPlan",
                table: "Piece",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "StandsIn",
                table: "Piece",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Wall",
                table: "Mould",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "LimitC",
                table: "Material",
                type: "REAL",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "KnownCure",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    ResinId = table.Column<int>(type: "INTEGER", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    CuringLogId = table.Column<int>(type: "INTEGER", nullable: true),
                    Sheet = table.Column<string>(type: "TEXT", nullable: true),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Misfit = table.Column<double>(type: "REAL", nullable: false),
                    Data = table.Column<string>(type: "TEXT", nullable: false),
                    Findings = table.Column<string>(type: "TEXT", nullable: false),
                    Standing = table.Column<string>(type: "TEXT", nullable: false),
                    DecidedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    DecidedBy = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KnownCure", x => x.Id);
                    table.ForeignKey(
                        name: "FK_KnownCure_Resin_ResinId",
                        column: x => x.ResinId,
                        principalTable: "Resin",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Pot",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    RatedBar = table.Column<double>(type: "REAL", nullable: true),
                    WorkingBar = table.Column<double>(type: "REAL", nullable: true),
                    TestedOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    TestDueOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    InnerDiameterMm = table.Column<double>(type: "REAL", nullable: true),
                    InnerHeightMm = table.Column<double>(type: "REAL", nullable: true),
                    Notes = table.Column<string>(type: "TEXT", nullable: false),
                    Retired = table.Column<bool>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Pot", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Sensor",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    Way = table.Column<string>(type: "TEXT", nullable: false),
                    TokenHash = table.Column<string>(type: "TEXT", nullable: true),
                    Topic = table.Column<string>(type: "TEXT", nullable: false),
                    CelsiusField = table.Column<string>(type: "TEXT", nullable: false),
                    HumidityField = table.Column<string>(type: "TEXT", nullable: false),
                    Unit = table.Column<string>(type: "TEXT", nullable: false),
                    CorrectionK = table.Column<double>(type: "REAL", nullable: false),
                    EveryMinutes = table.Column<double>(type: "REAL", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    RemovedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    HeardAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    LastRefusal = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sensor", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "CuringLog",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    PourId = table.Column<int>(type: "INTEGER", nullable: false),
                    Place = table.Column<int>(type: "INTEGER", nullable: false),
                    HeightMm = table.Column<double>(type: "REAL", nullable: true),
                    Readings = table.Column<string>(type: "TEXT", nullable: false),
                    SensorId = table.Column<int>(type: "INTEGER", nullable: true),
                    GelAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    FirmAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Notes = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CuringLog", x => x.Id);
                    table.ForeignKey(
                        name: "FK_CuringLog_Pour_PourId",
                        column: x => x.PourId,
                        principalTable: "Pour",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CuringLog_Sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "Sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Reading_Place_At",
                table: "Reading",
                columns: new[] { "Place", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_Reading_SensorId_At",
                table: "Reading",
                columns: new[] { "SensorId", "At" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_CuringLog_PourId",
                table: "CuringLog",
                column: "PourId");

            migrationBuilder.CreateIndex(
                name: "IX_CuringLog_SensorId",
                table: "CuringLog",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_KnownCure_ResinId_Lot",
                table: "KnownCure",
                columns: new[] { "ResinId", "Lot" });

            migrationBuilder.CreateIndex(
                name: "IX_Pot_Name",
                table: "Pot",
                column: "Name");

            migrationBuilder.CreateIndex(
                name: "IX_Sensor_TokenHash",
                table: "Sensor",
                column: "TokenHash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CuringLog");

            migrationBuilder.DropTable(
                name: "KnownCure");

            migrationBuilder.DropTable(
                name: "Pot");

            migrationBuilder.DropTable(
                name: "Sensor");

            migrationBuilder.DropIndex(
                name: "IX_Reading_Place_At",
                table: "Reading");

            migrationBuilder.DropIndex(
                name: "IX_Reading_SensorId_At",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "Broker",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "CupGelMinutes",
                table: "Resin");

            migrationBuilder.DropColumn(
                name: "CupPeakC",
                table: "Resin");

            migrationBuilder.DropColumn(
                name: "LimitC",
                table: "Resin");

            migrationBuilder.DropColumn(
                name: "Doubt",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "ReceivedAt",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "SensorId",
                table: "Reading");

            migrationBuilder.DropColumn(
                name: "Foretold",
                table: "Pour");

            migrationBuilder.DropColumn(
                name: "Kinetics",
                table: "Pour");

            migrationBuilder.DropColumn(
                name: "WaitHours",
                table: "PieceLayer");

            migrationBuilder.DropColumn(
                name: "PotId",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "RoomPlan",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "StandsIn",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "Wall",
                table: "Mould");

            migrationBuilder.DropColumn(
                name: "LimitC",
                table: "Material");
        }
    }
}
